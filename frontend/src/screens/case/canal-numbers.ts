import type { CanalFacts, CanalShown } from '@/api/shapes'
import { type Quantity, wrongOf } from '@/parts/bounds'
import { mm, readMm } from '@/units/millimetres'
import { words } from '@/words/en'

interface Measured {
  readonly quantity: Quantity
  readonly label: string
  readonly unit: string
  readonly step: number
  /** Where stepping begins from an empty field. */
  readonly from: number
}

const depth = { quantity: 'depth', unit: 'mm', step: 0.5 } as const
const { chart } = words

/** What can be measured in a canal; an empty one was not measured. */
export const NUMBERS = {
  orifice_mm: { ...depth, label: chart.orifice, from: 6 },
  curvature_deg: { quantity: 'curvature', label: chart.curvature, unit: '°', step: 1, from: 10 },
  curve_start_mm: { ...depth, label: chart.curveStart, from: 14 },
  apex_mm: { quantity: 'apex', label: chart.apex, unit: 'mm', step: 0.1, from: 0.6 },
  first_binder_size: { quantity: 'hand_size', label: chart.firstBinder, unit: chart.handSize, step: 5, from: 20 },
  curve_radius_mm: { quantity: 'curve_radius', label: chart.curveRadius, unit: 'mm', step: 0.5, from: 8 },
  curve_from_end_mm: { ...depth, label: chart.curveFromEnd, from: 4 },
  wall_mm: { quantity: 'wall', label: chart.wall, unit: 'mm', step: 0.1, from: 0.8 },
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
  const other = BESIDE[name]
  if (typed[name].trim() === '') return other && typed[other].trim() !== '' ? words.required : undefined
  return wrongOf(NUMBERS[name].quantity, typed[name])
}

/** The numbers as they are sent. */
export function toNumbers(typed: Typed): CanalFacts {
  const { wall_mm, wall_from_end_mm, ...rest } = Object.fromEntries(
    NAMES.map((name) => [name, readMm(typed[name]) ?? null]),
  ) as Record<NumberName, number | null>
  const measured = wall_mm !== null && wall_from_end_mm !== null
  return { ...rest, wall: measured ? { thickness_mm: wall_mm, from_end_mm: wall_from_end_mm } : null }
}
