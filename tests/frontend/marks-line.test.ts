import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { arcsOf, lengthOf, type Mark, placeOf, toSideDeg } from '@/marks/line'

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
    const place = placeOf(marks, along, straight_to)
    if (at === null) expect(place).toBeUndefined()
    else for (const i of [0, 1] as const) expect(place?.[i]).toBeCloseTo(at[i], 5)
  }
  if (axis !== undefined)
    expect(Math.abs(toSideDeg(marks.slice(0, axis), marks.at(-1) as Mark))).toBeCloseTo(schneider_deg ?? 0, 5)
})

test('there are cases', () => expect(cases.length).toBeGreaterThan(8))

test('a line is drawn as the arcs that it is measured by', () => {
  // By hand: 8 mm straight down, then marks on a circle of radius 10 about (10, 8), counter-clockwise on the screen.
  const onCircle = (deg: number): Mark => [
    10 - 10 * Math.cos((deg * Math.PI) / 180),
    8 + 10 * Math.sin((deg * Math.PI) / 180),
  ]
  const marks: Mark[] = [[0, 0], ...[0, 20, 45, 60].map(onCircle)]
  const arcs = arcsOf(marks, 1)
  expect(arcs.map(({ to }) => to)).toEqual(marks.slice(1))
  expect(arcs[0]?.radius).toBeUndefined()
  for (const { radius } of arcs.slice(1)) expect(radius).toBeCloseTo(-10, 6)
  const other = arcsOf(
    marks.map(([x, y]): Mark => [-x, y]),
    1,
  )
  for (const { radius } of other.slice(1)) expect(radius).toBeCloseTo(10, 6)
})

test('what is drawn is where it is measured: the middle of each arc', () => {
  const marks: Mark[] = [
    [0, 0],
    [1, 6],
    [4, 9],
    [9, 10],
    [10, 15],
  ]
  let along = 0
  arcsOf(marks).forEach(({ to, radius = Number.POSITIVE_INFINITY }, i) => {
    const from = marks[i] as Mark
    const chord = Math.hypot(to[0] - from[0], to[1] - from[1])
    const half = Math.asin(chord / 2 / radius)
    const length = Number.isFinite(radius) ? 2 * radius * half : chord
    const middle = placeOf(marks, along + length / 2) as Mark
    // By hand: a way that turns clockwise on the screen bulges to the left of its chord.
    const high = Number.isFinite(radius) ? radius * (1 - Math.cos(half)) : 0
    const [ux, uy] = [(to[0] - from[0]) / chord, (to[1] - from[1]) / chord]
    expect(middle[0]).toBeCloseTo((from[0] + to[0]) / 2 + uy * high, 6)
    expect(middle[1]).toBeCloseTo((from[1] + to[1]) / 2 - ux * high, 6)
    along += length
  })
})
