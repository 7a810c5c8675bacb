import { describe, expect, test } from 'vitest'
import {
  emptyFields,
  lacking,
  type Method,
  type ReadingFields,
  toJunction,
  toReading,
} from '@/panels/readings/reading-fields'

const fields = (method: Method, typed: Partial<ReadingFields> = {}) => ({ ...emptyFields('id', method), ...typed })

describe('what is lacking', () => {
  test.each<[Method, (keyof ReadingFields)[]]>([
    ['pre_operative_image', ['tooth_mm']],
    ['ratio', ['instrument_mm', 'instrument_on_image_mm', 'tooth_on_image_mm']],
    ['confirming_image', ['set_mm', 'tip_by_mm', 'tip']],
    ['apex_locator', ['read_mm', 'repeat_mm', 'mark']],
    ['direct_sight', ['seen_mm']],
    ['junction', ['from_terminus_mm', 'junction_method']],
  ])('%s: everything of its own, nothing of another', (method, names) => {
    expect(lacking(fields(method))).toEqual(names)
  })

  test('what is no number is lacking', () => {
    expect(lacking(fields('direct_sight', { seen_mm: '19,5 mm' }))).toEqual(['seen_mm'])
  })

  test('a tip at the apex needs no distance', () => {
    expect(lacking(fields('confirming_image', { set_mm: '18', tip: 'at' }))).toEqual([])
  })
})

describe('what is sent', () => {
  test.each([
    ['short', '0,5', 0.5],
    ['past', '0.5', -0.5],
    ['past', '-0.5', -0.5],
    ['at', '3', 0],
  ] as const)('a tip %s by %s is %f short', (tip, tip_by_mm, tip_short_mm) => {
    const typed = fields('confirming_image', { set_mm: '18.5', tip, tip_by_mm, after_flaring: true })
    expect(toReading(typed, 'MB cusp')).toEqual({
      method: 'confirming_image',
      set_mm: 18.5,
      tip_short_mm,
      reference_point: 'MB cusp',
      after_flaring: true,
    })
  })

  test('a locator is read twice, at a mark, stable or not', () => {
    const typed = fields('apex_locator', { read_mm: '20', repeat_mm: '20,5', mark: 'apex', stable: true })
    expect(toReading(typed, 'B cusp')).toMatchObject({ read_mm: 20, repeat_mm: 20.5, mark: 'apex', stable: true })
  })

  test('a junction carries the length of the moment', () => {
    const typed = fields('junction', { from_terminus_mm: '3', junction_method: 'cone_mark' })
    expect(toJunction(typed, 18.5)).toEqual({ from_terminus_mm: 3, method: 'cone_mark', at_length_mm: 18.5 })
  })

  test('a junction is no length', () => {
    expect(() => toReading(fields('junction'), 'MB cusp')).toThrow(TypeError)
  })
})
