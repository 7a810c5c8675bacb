import { describe, expect, test } from 'vitest'
import { match } from '@/router'
import { mm, readMm } from '@/units/millimetres'
import { when } from '@/words/common'
import { worklist } from '@/words/worklist'

describe('millimetres', () => {
  test.each([
    ['19,5', 19.5],
    ['19.5', 19.5],
    [' 20 ', 20],
    ['0', 0],
    ['20.', 20],
  ])('%s is read as %f', (typed, value) => {
    expect(readMm(typed)).toBe(value)
  })

  test.each(['', 'abc', '19,5,0', '1e3', '19 5', 'Infinity', '2000'])('%s is no length', (typed) => {
    expect(readMm(typed)).toBeUndefined()
  })

  test.each([
    [20, '20.0'],
    [18.5, '18.5'],
    [18.25, '18.25'],
    [0.1 + 0.2, '0.3'],
  ])('%f is written %s', (value, text) => {
    expect(mm(value)).toBe(text)
  })
})

describe('addresses', () => {
  test('a pattern gives its named parts', () => {
    expect(match('/cases/:id/plan', '/cases/a%20b/plan?view=stops')).toEqual({ id: 'a b' })
  })

  test.each(['/cases', '/cases/7', '/cases//plan', '/cases/7/plans', '/cases/7/plan/x'])('%s is another', (path) => {
    expect(match('/cases/:id/plan', path)).toBeUndefined()
  })
})

describe('times', () => {
  const now = new Date('2026-03-02T12:00:00')
  test('today has its hour, another day its date too', () => {
    expect(when(new Date('2026-03-02T09:05:00').getTime(), now)).toBe('09:05')
    expect(when(new Date('2026-02-27T09:05:00').getTime(), now)).toBe('27 Feb, 09:05')
  })

  test.each([
    [20, 'just now'],
    [12 * 60, '12 min'],
    [3 * 3600, '3 h'],
    [75 * 3600, '3 days'],
  ])('waiting %i s: %s', (seconds, text) => {
    expect(worklist.waits(seconds)).toBe(text)
  })
})
