import type { Junction, Reading } from '@/api/shapes'
import { type Quantity, wrongOf } from '@/parts/bounds'
import { readMm } from '@/units/millimetres'

export type Method = Reading['method'] | 'junction'

/** What is typed in the form of a reading, as it was typed. */
export interface ReadingFields {
  /** Made with the form, so that sending again is harmless. */
  id: string
  method: Method
  tooth_mm: string
  instrument_mm: string
  instrument_on_image_mm: string
  tooth_on_image_mm: string
  set_mm: string
  tip: 'short' | 'at' | 'past' | ''
  tip_by_mm: string
  read_mm: string
  repeat_mm: string
  mark: Extract<Reading, { method: 'apex_locator' }>['mark'] | ''
  stable: boolean
  seen_mm: string
  from_terminus_mm: string
  junction_method: Junction['method'] | ''
  after_flaring: boolean
}

export function emptyFields(id: string, method: Method): ReadingFields {
  const typed = { tooth_mm: '', instrument_mm: '', instrument_on_image_mm: '', tooth_on_image_mm: '', set_mm: '' }
  const more = { tip: '', tip_by_mm: '', read_mm: '', repeat_mm: '', mark: '', stable: false, seen_mm: '' } as const
  return { id, method, ...typed, ...more, from_terminus_mm: '', junction_method: '', after_flaring: false }
}

export type MmField = Extract<keyof ReadingFields, `${string}_mm`>

const NEEDED: Record<Method, readonly MmField[]> = {
  pre_operative_image: ['tooth_mm'],
  ratio: ['instrument_mm', 'instrument_on_image_mm', 'tooth_on_image_mm'],
  confirming_image: ['set_mm', 'tip_by_mm'],
  apex_locator: ['read_mm', 'repeat_mm'],
  direct_sight: ['seen_mm'],
  junction: ['from_terminus_mm'],
}

/** The numbers that the method needs, in the order in which they are taken. */
export const numbersOf = ({ method, tip }: Pick<ReadingFields, 'method' | 'tip'>): readonly MmField[] =>
  NEEDED[method].filter((field) => !(field === 'tip_by_mm' && tip === 'at'))

/** What each number is of: its bounds are the server's. */
export const QUANTITY: Record<MmField, Quantity> = {
  tooth_mm: 'length',
  instrument_mm: 'length',
  instrument_on_image_mm: 'on_image',
  tooth_on_image_mm: 'on_image',
  set_mm: 'length',
  tip_by_mm: 'tip',
  read_mm: 'length',
  repeat_mm: 'length',
  seen_mm: 'length',
  from_terminus_mm: 'depth',
}

/** What is wrong with a number as typed; nothing where it is right. */
export const wrongNumber = (fields: ReadingFields, name: MmField): string | undefined =>
  wrongOf(QUANTITY[name], fields[name])

/** Fields that still lack a number that can be right, or a choice. */
export function lacking(fields: ReadingFields): (keyof ReadingFields)[] {
  const numbers = numbersOf(fields).filter((f) => wrongNumber(fields, f) !== undefined)
  const tip = fields.method === 'confirming_image' && fields.tip === '' ? (['tip'] as const) : []
  const mark = fields.method === 'apex_locator' && fields.mark === '' ? (['mark'] as const) : []
  const how = fields.method === 'junction' && fields.junction_method === '' ? (['junction_method'] as const) : []
  return [...numbers, ...tip, ...mark, ...how]
}

/** The reading to send. Call it only with nothing lacking. */
export function toReading(fields: ReadingFields, reference_point: string): Reading {
  const n = (field: MmField) => readMm(fields[field]) ?? Number.NaN
  const same = { reference_point, after_flaring: fields.after_flaring }
  switch (fields.method) {
    case 'pre_operative_image':
      return { method: fields.method, tooth_mm: n('tooth_mm'), ...same }
    case 'ratio':
      return {
        method: fields.method,
        instrument_mm: n('instrument_mm'),
        instrument_on_image_mm: n('instrument_on_image_mm'),
        tooth_on_image_mm: n('tooth_on_image_mm'),
        ...same,
      }
    case 'confirming_image':
      return { method: fields.method, set_mm: n('set_mm'), tip_short_mm: tipShort(fields), ...same }
    case 'apex_locator':
      return {
        method: fields.method,
        read_mm: n('read_mm'),
        repeat_mm: n('repeat_mm'),
        mark: fields.mark === 'apex' ? 'apex' : 'constriction',
        stable: fields.stable,
        ...same,
      }
    case 'direct_sight':
      return { method: fields.method, seen_mm: n('seen_mm'), ...same }
    case 'junction':
      throw new TypeError('a junction is no reading of a length')
  }
}

/** Where the canal joins, and how long it was when that was measured: a later length does not move the junction. */
export function toJunction(fields: ReadingFields, at_length_mm: number | null | undefined): Junction {
  const from_terminus_mm = readMm(fields.from_terminus_mm) ?? Number.NaN
  const method = fields.junction_method || 'image_estimate'
  return { from_terminus_mm, method, at_length_mm: at_length_mm ?? null }
}

/** Short of the apex counts up from 0, past it down: the sign is chosen by a word, never typed. */
function tipShort(fields: ReadingFields): number {
  if (fields.tip === 'at') return 0
  const by = Math.abs(readMm(fields.tip_by_mm) ?? Number.NaN)
  return fields.tip === 'past' ? -by : by
}

/** Where the tooth ends by a reading [mm from the reference point], with nothing taken off. */
export function toothBy(reading: Reading): number {
  switch (reading.method) {
    case 'pre_operative_image':
      return reading.tooth_mm
    case 'ratio':
      return (reading.instrument_mm * reading.tooth_on_image_mm) / reading.instrument_on_image_mm
    case 'confirming_image':
      return reading.set_mm + reading.tip_short_mm
    case 'apex_locator':
      return Math.min(reading.read_mm, reading.repeat_mm)
    case 'direct_sight':
      return reading.seen_mm
  }
}
