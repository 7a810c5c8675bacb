import type { CanalFacts, CanalShown } from '@/api/shapes'
import { BOUNDS, FACTS, type FactName, wrongOf } from '@/parts/bounds'
import { mm, readMm } from '@/units/millimetres'
import { words } from '@/words/en'

const NUMBERS = Object.keys(FACTS) as FactName[]
export const USUAL = NUMBERS.filter((name) => FACTS[name].usual)
export const FURTHER = NUMBERS.filter((name) => !FACTS[name].usual)

/** The numbers as they are typed; an empty one was not measured. */
export type Typed = Record<FactName, string>

/** The numbers as they are charted, ready to be typed over. */
export function chartedNumbers(canal: CanalShown): Typed {
  const typed = (name: FactName) => {
    const value = valueAt(canal, name)
    if (value === null) return ''
    return (BOUNDS[FACTS[name].quantity].step ?? 1) < 1 ? mm(value) : String(value)
  }
  return Object.fromEntries(NUMBERS.map((name) => [name, typed(name)])) as Typed
}

type Part = Record<string, unknown> | null

function valueAt(canal: CanalShown, name: FactName): number | null {
  const value = name.split('.').reduce<unknown>((at, part) => (at as Part)?.[part], canal)
  return typeof value === 'number' ? value : null
}

/** The other numbers of the same fact: they go together. */
const beside = (name: FactName) =>
  NUMBERS.filter((other) => other !== name && other.split('.')[0] === name.split('.')[0])

/** What is wrong with a number as typed; nothing where it is right. */
export function wrongNumber(name: FactName, typed: Typed): string | undefined {
  if (typed[name].trim() !== '') return wrongOf(FACTS[name].quantity, typed[name])
  return beside(name).some((other) => typed[other].trim() !== '') ? words.required : undefined
}

/** The numbers as they are sent; a fact of several is there with all of them. */
export function toNumbers(typed: Typed): CanalFacts {
  const sent: Record<string, number | null | Record<string, number>> = {}
  for (const name of NUMBERS) {
    const [fact = name, part] = name.split('.')
    const value = readMm(typed[name]) ?? null
    const before = sent[fact] === undefined ? {} : sent[fact]
    if (part === undefined || value === null) sent[fact] = value
    else if (before !== null) sent[fact] = { ...(before as object), [part]: value }
  }
  return sent as CanalFacts
}
