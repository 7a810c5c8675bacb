import { mm } from '@/units/millimetres'
import { plainKey } from './plain'

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

export const lengthState = (key: string) => LENGTH_STATES[key] ?? plainKey(key)

interface Calculation {
  readonly formula: string
  readonly inputs: readonly { name: string; value: number; unit: string }[]
  readonly exact: number
  readonly rounding: string
  readonly result: number
  readonly unit: string
}

const SIGNS: Record<string, string> = { '*': ' × ', '/': ' ⁄ ', '-': ' − ', min: 'least of (', max: 'most of (' }
/** How finely a number is rounded down. */
const DOWN_TO: Record<string, number> = { half_mm_down: 0.5, hundredth_down: 0.01 }
const WHOLE = ['', 'size', '0.01 mm', '0.01 mm/mm']

/** A number in a line of arithmetic: a length with a decimal at least, none in more than its value needs. */
function numeral(value: number, unit: string): string {
  const text = String(Number(Math.abs(value).toFixed(5)))
  const fraction = text.includes('.') || WHOLE.includes(unit) ? text : `${text}.0`
  return value < 0 ? `(−${fraction})` : fraction
}

/** What the line comes to before it is rounded down: so many decimals that the rounding can be seen. */
function unrounded({ exact, rounding, result }: Calculation): string {
  const step = DOWN_TO[rounding]
  const seen = step === undefined || Math.floor(Number(mm(exact)) / step + 1e-6) * step < result + step / 2
  return seen ? mm(exact) : exact.toFixed(3)
}

/** The arithmetic on one line: '7.5 + (19.0 − 7.5) ⁄ 3 = 11.33 → 11.0'. Nothing where it only repeats the number. */
function line(of: Calculation): string {
  const values = new Map(of.inputs.map(({ name, value, unit }) => [name, numeral(value, unit)]))
  const text = of.formula
    .replace(/ ([-*/]) /g, (_, sign: string) => SIGNS[sign] ?? sign)
    .replace(/(min|max)\(/g, (_, name: string) => SIGNS[name] ?? name)
    .replace(/\{(.*?)\}/g, (_, name: string) => values.get(name) ?? name)
  const whole = WHOLE.includes(of.unit)
  const result = whole ? String(of.result) : mm(of.result)
  const exact = whole ? result : unrounded(of)
  return text === result ? '' : `${text} = ${exact === result ? result : `${exact} → ${result}`}`
}

/** A figure with its unit; a share has none. */
export function figureOf(value: number, unit: string): string {
  return unit === '1' || unit === '' ? String(value) : `${value} ${unit}`
}

export const rationale = {
  line,
  title: (canal: string | undefined, title: string) => (canal ? `${canal}: ${title}` : title),
  ask: (canal: string | undefined, title: string, value: string, check: boolean) =>
    `Why ${value}: ${canal ? `${canal}, ` : ''}${title}${check ? ', reference value, check' : ''}`,
  source: 'Where it comes from',
  everything: (figures: number) => `All that this plan rests on: ${figures} figures`,
  touch: 'Touch a number to see why.',
  legend: 'reference value, check',
  made: (planner: string, data: string) => `Planner ${planner}, data ${data}.`,
  figure: figureName,
  programmeValue: 'Your programme’s own value.',
  known: (know: string) => KNOWN[know] ?? `Source ${know}.`,
  length: (state: string, methods: readonly string[]) =>
    `Length ${LENGTH_STATES[state] ?? state}${
      methods.length ? `, rests on ${methods.map((m) => METHODS[m] ?? m).join(' and ')}` : ''
    }.`,
  marks: (canal: string, marks: readonly { title: string; value: string }[]) =>
    `${canal}, ${marks.map(({ title, value }) => `${title}, ${value}`).join('; ')}: why`,
  coronal: 'coronal instruments, never past',
  recorded: (instrument: string) => `${instrument} stopped at`,
  end: 'ends at',
  stop: (instrument: string) => `stop of ${instrument}`,
  needle: 'needle, never past',
  needleBegins: 'needle at first, at most',
  needleNow: (after: string) => `needle after ${after}, at most`,
  size: 'advised sizes',
  makeRoom: 'stop of what makes room',
  band: (instrument: string) => `band of ${instrument}`,
  passes: 'passes of the series',
  expected: (instrument: string) => `expected depth of ${instrument}`,
}
