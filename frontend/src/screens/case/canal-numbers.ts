import type { CanalFacts, CanalShown } from '@/api/shapes'
import { mm, readMm } from '@/parts/millimetres'
import { words } from '@/words/en'

interface Measured {
  readonly label: string
  readonly unit: string
  readonly step: number
  /** Where stepping begins from an empty field. */
  readonly from: number
  readonly least: number
  readonly most: number
}

const depth = { unit: 'mm', step: 0.5, least: 0, most: 40 } // longer than any tooth
const { chart } = words

/** What can be measured in a canal; an empty one was not measured. */
export const NUMBERS = {
  orifice_mm: { ...depth, label: chart.orifice, from: 6 },
  curvature_deg: { label: chart.curvature, unit: '°', step: 1, from: 10, least: 0, most: 180 },
  curve_start_mm: { ...depth, label: chart.curveStart, from: 14 },
  apex_mm: { ...depth, label: chart.apex, step: 0.1, from: 0.6, most: 5 },
  first_binder_size: { label: chart.firstBinder, unit: chart.handSize, step: 5, from: 20, least: 6, most: 140 },
  curve_radius_mm: { ...depth, label: chart.curveRadius, from: 8, least: 0.1, most: 100 },
  curve_from_end_mm: { ...depth, label: chart.curveFromEnd, from: 4 },
  wall_mm: { ...depth, label: chart.wall, step: 0.1, from: 0.8, least: 0.1, most: 5 },
  wall_from_end_mm: { ...depth, label: chart.wallFromEnd, from: 10 },
} as const satisfies Record<string, Measured>

export type NumberName = keyof typeof NUMBERS
export type Typed = Record<NumberName, string>

export const USUAL: readonly NumberName[] = [
  'orifice_mm',
  'curvature_deg',
  'curve_start_mm',
  'apex_mm',
  'first_binder_size',
]
export const FURTHER: readonly NumberName[] = ['curve_radius_mm', 'curve_from_end_mm', 'wall_mm', 'wall_from_end_mm']

const NAMES = [...USUAL, ...FURTHER]

/** The numbers as they are charted, ready to be typed over. */
export function chartedNumbers({ wall, ...canal }: CanalShown): Typed {
  const all = { ...canal, wall_mm: wall?.thickness_mm ?? null, wall_from_end_mm: wall?.from_end_mm ?? null }
  const typed = (name: NumberName, value: number | null) =>
    value === null ? '' : NUMBERS[name].step < 1 ? mm(value) : String(value)
  return Object.fromEntries(NAMES.map((name) => [name, typed(name, all[name])])) as Typed
}

/** A wall's two numbers go together. */
const BESIDE: Partial<Record<NumberName, NumberName>> = { wall_mm: 'wall_from_end_mm', wall_from_end_mm: 'wall_mm' }

/** What is wrong with a number as typed; nothing where it is right. */
export function wrongNumber(name: NumberName, typed: Typed): string | undefined {
  const { least, most, unit } = NUMBERS[name]
  const other = BESIDE[name]
  if (typed[name].trim() === '') return other && typed[other].trim() !== '' ? words.required : undefined
  const value = readMm(typed[name])
  if (value === undefined) return words.fields.noNumber
  return value < least || most < value ? words.fields.between(least, most, unit) : undefined
}

/** The numbers as they are sent. */
export function toNumbers(typed: Typed): CanalFacts {
  const { wall_mm, wall_from_end_mm, ...rest } = Object.fromEntries(
    NAMES.map((name) => [name, readMm(typed[name]) ?? null]),
  ) as Record<NumberName, number | null>
  const measured = wall_mm !== null && wall_from_end_mm !== null
  return { ...rest, wall: measured ? { thickness_mm: wall_mm, from_end_mm: wall_from_end_mm } : null }
}
