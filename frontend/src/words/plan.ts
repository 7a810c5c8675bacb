import { plainKey } from './plain'

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

const IRRIGANTS: Record<string, string> = {
  water: 'water',
  saline: 'saline',
  sodium_hypochlorite: 'sodium hypochlorite',
  chlorhexidine: 'chlorhexidine',
  edta: 'EDTA',
}

export const irrigant = (key: string) => IRRIGANTS[key] ?? plainKey(key)

export const irrigants = IRRIGANTS

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
