import { plainKey } from './drawing'

const ACTIONS: Record<string, string> = {
  instrument: 'Instrument',
  irrigate: 'Irrigate',
  recapitulate: 'recapitulate',
  image: 'Image',
  sign_off: 'Sign-off',
  gauge: 'gauge, no cutting',
  fit_cone: 'Fit the master cone',
  dry: 'Dry',
  fill: 'Obturate',
}

const METHODS: Record<string, string> = {
  pre_operative_image: 'pre-operative image',
  ratio: 'ratio on the image',
  confirming_image: 'confirming image',
  apex_locator: 'apex locator',
  direct_sight: 'direct sight',
}

const LENGTH_STATES: Record<string, string> = {
  missing: 'no length yet',
  estimated: 'estimated',
  settled: 'settled',
  to_settle: 'to be settled',
  unsettled: 'unsettled',
}

const IRRIGANTS: Record<string, string> = {
  water: 'water',
  saline: 'saline',
  sodium_hypochlorite: 'sodium hypochlorite',
  chlorhexidine: 'chlorhexidine',
  edta: 'EDTA',
}

const KNOWN: Record<string, string> = {
  read: 'Read in the source.',
  'read second-hand': 'Read as another text quotes it.',
  'from memory': 'Reference value, check: it stands here from memory.',
  derived: 'Derived from what is given.',
  'common practice': 'Common practice, no source: check it against your programme.',
  'programme rule': 'Programme rule: a judgement without a source; your programme may set its own.',
}

/** Figures whose key would read as something else. */
const FIGURES: Record<string, string> = { 'wall.stop': 'Wall, no shaping below' }

/** A figure's key as a reader sees it: `foramina/16/P/narrow_mm` is Foramina, 16, P, narrow. */
function figureName(key: string): string {
  return FIGURES[key] ?? plainKey(key.replace(/_(mm|mm3|deg|ml|pct)$/, '').replace(/[./]/g, ', '))
}

export const method = (key: string) => METHODS[key] ?? plainKey(key)

export const irrigant = (key: string) => IRRIGANTS[key] ?? plainKey(key)

export const irrigants = IRRIGANTS

export const lengthState = (key: string) => LENGTH_STATES[key] ?? plainKey(key)

export const order = {
  pass: (n: number) => `pass ${n}`,
  action: (key: string) => ACTIONS[key] ?? plainKey(key),
  motion: (key: string) => ({ hand: 'hand', continuous: 'rotary', reciprocating: 'reciprocating' })[key] ?? key,
  target: (key: string) => ({ to_length: 'to length', to_resistance: 'to resistance' })[key] ?? key,
  holdPoint: (name: string, image: boolean) => `Hold point: ${name}${image ? ', with an image' : ''}`,
  shorter: (less: string) => `${less} mm short of where it stopped`,
  afterwards: (parts: readonly string[]) => `then ${parts.join(', ')}`,
  irrigate: (ml: number | null, at: string | undefined) =>
    `irrigate${ml === null ? '' : ` ${ml} mL`}${at ? `, needle to ${at} at most` : ''}`,
  recapitulate: (instrument: string, stop: string | undefined) => `${instrument}${stop ? ` to ${stop}` : ''}`,
  ifShort: (steps: readonly string[], then: 'again' | 'supervisor' | 'on') =>
    `If it stops short: ${[...steps, { again: 'the same again', supervisor: 'ask the supervisor', on: '' }[then]].filter(Boolean).join(', then ') || 'do not push; go on'}.`,
  ifBlocked: (small: string, steps: readonly string[]) =>
    `If ${small} does not pass: ${steps.join(', then ')}; if it still does not, an image and the supervisor.`,
  withheld: (phase: string) => `Withheld from ${phase}:`,
  whose: 'Whose order',
  atTheTray: 'At the tray',
  shared: (n: number) => `Shared · ${n} changes`,
  single: (n: number) => `One at a time · ${n}`,
  way: 'How the instruments are taken up',
  fewer: (n: number) =>
    n > 0
      ? `Sharing saves ${n} changes of instrument. Flood the chamber, clean the instrument and look at it before each canal.`
      : n < 0
        ? `One canal after the other takes ${-n} changes fewer. But then each comes to its images and hold points by itself.`
        : 'Sharing saves no change of instrument here.',
  layOut: 'Lay out, left to right',
  nothingOpen: 'Nothing is laid out yet: the cautions say what has to come first.',
  withinReach: 'Within reach, in case a canal resists',
}

export const difference = {
  technique: 'technique',
  kit: 'kit',
  irrigant: 'irrigant',
  instruments: 'laid out',
  trayChanges: 'changes at the tray',
  cautions: 'cautions',
  canal: 'canal',
  added: 'added',
  none: 'none',
  finalSize: 'final size',
  end: 'ends at',
  needle: 'needle never past',
  stop: (instrument: string, phase: string) => `stop of ${instrument}, ${phase.toLowerCase()}`,
  withheld: 'withheld from',
  nothing: 'Nothing differs.',
  tooth: 'Tooth',
  was: 'was ',
  is: 'now ',
}

export const why = {
  length: (state: string, methods: readonly string[]) =>
    `Length ${LENGTH_STATES[state] ?? state}${
      methods.length ? `, rests on ${methods.map((m) => METHODS[m] ?? m).join(' and ')}` : ''
    }.`,
  size: (size: string, advised: string) => `Final size ${size}; advised ${advised}.`,
  canals: 'Lengths and sizes',
  figures: 'Figures used',
  figure: figureName,
  programmeValue: 'Your programme’s own value.',
  known: (know: string) => KNOWN[know] ?? `Source ${know}.`,
  made: (planner: string, data: string) => `Planner ${planner}, data ${data}.`,
}
