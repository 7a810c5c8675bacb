import { describe, expect, test } from 'vitest'
import { EMPTY, EMPTY_LINE, lineOf } from '@/panels/marks/draft'
import { unsaid } from '@/screens/review/review-fields'
import { byName, own } from '@/walk/own'

const NAMES = ['constructor', '__proto__', 'toString', 'hasOwnProperty']

describe('a name that every object has something under', () => {
  test.each(NAMES)('%s finds nothing where nothing was put', (name) => {
    expect(own({}, name)).toBeUndefined()
    expect(byName([])[name]).toBeUndefined()
    expect(lineOf(EMPTY, name)).toBe(EMPTY_LINE)
    expect(unsaid({ remarks: {}, returned: [name] } as unknown as Parameters<typeof unsaid>[0])).toEqual([name])
  })

  test.each(NAMES)('%s finds what was put there', (name) => {
    expect(byName([[name, 7]])[name]).toBe(7)
    expect(own(byName([[name, 7]]), name)).toBe(7)
    expect(own({ ...{}, [name]: 7 }, name)).toBe(7)
    expect(Object.keys(byName([[name, 7]]))).toEqual([name])
  })
})
