import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { lengthOf, type Mark, placeOf, schneiderDeg } from '@/marks/line'

interface Case {
  name: string
  marks: Mark[]
  straight_to: number
  length?: number
  places: { along: number; at: Mark | null }[]
  axis?: number
  schneider_deg?: number
}

// The worked cases that the server's measuring answers too.
const { cases } = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/marks.json'), 'utf8')) as {
  cases: Case[]
}

test.each(cases)('$name', ({ marks, straight_to, length, places, axis, schneider_deg }) => {
  if (length !== undefined) expect(lengthOf(marks, straight_to)).toBeCloseTo(length, 5)
  for (const { along, at } of places) {
    const found = placeOf(marks, along, straight_to)
    if (at === null) expect(found).toBeUndefined()
    else for (const i of [0, 1] as const) expect(found?.[i]).toBeCloseTo(at[i], 5)
  }
  if (axis !== undefined)
    expect(schneiderDeg(marks.slice(0, axis), marks.at(-1) as Mark)).toBeCloseTo(schneider_deg ?? 0, 5)
})

test('there are cases', () => expect(cases.length).toBeGreaterThan(8))
