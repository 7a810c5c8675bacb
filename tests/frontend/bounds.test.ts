import { describe, expect, test } from 'vitest'
import { emptyFields, lacking, QUANTITY } from '@/panels/readings/reading-fields'
import { BOUNDS, wrongOf } from '@/parts/bounds'
import table from '@/parts/bounds.json'

// The judge is the server's table, which a test of the server holds to its data and to what it accepts.
const fields: Record<string, string> = table.fields

describe('a form asks for what the server bounds', () => {
  test('readings, by the same row whatever the method', () => {
    for (const [field, quantity] of Object.entries(fields)) {
      const name = field.split('.')[1] === 'tip_short_mm' ? 'tip_by_mm' : field.split('.')[1]
      if (name !== 'at_length_mm') expect([field, QUANTITY[name as keyof typeof QUANTITY]]).toEqual([field, quantity])
    }
  })
})

describe('at the bounds', () => {
  test.each(Object.entries(BOUNDS))('%s', (quantity, { least, most, sentence }) => {
    const of = quantity as keyof typeof BOUNDS
    const typed = [String(least), String(most)].filter((text) => /^-?\d{1,3}(\.\d{1,3})?$/.test(text))
    for (const text of typed) expect(wrongOf(of, text)).toBeUndefined()
    if (most < 999) expect(wrongOf(of, String(most + 1))).toBe(sentence)
    expect(wrongOf(of, String(least - 1))).toBe(sentence)
  })

  test.each(['', 'NaN', 'Infinity', '1e2', '0x14', '--1', '٢٠'])('%j is no number', (text) => {
    expect(wrongOf('length', text)).toBe('Type a number, for example 19.5 or 19,5.')
  })

  test('a reading outside them is not sent', () => {
    const typed = { ...emptyFields('1', 'direct_sight'), seen_mm: '38' }
    expect(lacking(typed)).toEqual(['seen_mm'])
    expect(lacking({ ...typed, seen_mm: '36' })).toEqual([])
  })
})
