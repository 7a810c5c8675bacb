import { expect, test } from 'vitest'
import { clock, dated, when } from '@/words/common'

// Judged by the language's own forms (ECMA-402, Intl.DateTimeFormat) of British English.
const intl = (form: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat('en-GB', form)
const DAY = intl({ day: 'numeric', month: 'short' })
const MINUTE = intl({ hour: '2-digit', minute: '2-digit' })
const SECOND = intl({ hour: '2-digit', minute: '2-digit', second: '2-digit' })
const DATED = intl({ dateStyle: 'medium', timeStyle: 'short' })

test('times are written as the language writes them, in every month and at every hour', () => {
  const now = new Date(2027, 0, 1)
  const times = Array.from({ length: 24 }, (_, i) => new Date(2026, i % 12, 1 + i, i, 59 - i, i))
  for (const time of times) {
    expect(when(time.toISOString(), now)).toBe(`${DAY.format(time)}, ${MINUTE.format(time)}`)
    expect(clock(time.getTime(), now)).toBe(`${DAY.format(time)}, ${SECOND.format(time)}`)
    expect(dated(time.toISOString())).toBe(DATED.format(time))
    expect(when(time.getTime(), time)).toBe(MINUTE.format(time))
  }
})
