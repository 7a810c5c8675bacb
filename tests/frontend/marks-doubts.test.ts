import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { doubtsOf } from '@/marks/doubts'
import type { Mark } from '@/marks/line'
import { EMPTY, EMPTY_LINE } from '@/panels/marks/draft'
import { unitOf } from '@/panels/marks/unit'
import { asksOf, tooFar } from '@/screens/marks/asks'

// Worked by hand; the server's measuring answers them too.
const { doubts, figures } = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/marks.json'), 'utf8'))

test.each(doubts as { name: string; marks: Mark[]; doubts: [number, string][] }[])('$name', (sample) => {
  expect(doubtsOf(sample.marks, figures.turn_deg).map(({ point, kind }) => [point, kind])).toEqual(sample.doubts)
})

test('there are cases', () => expect(doubts.length).toBeGreaterThan(4))

const IMAGE = { width: 4000, height: 3000 }
const unit = unitOf(EMPTY, undefined, figures)

test('a mark on the edge of the image is asked about', () => {
  const points = [
    { x: 100, y: 0 },
    { x: 100, y: 900 },
    { x: 100, y: 2999 },
  ]
  expect(asksOf({ ...EMPTY, lines: { P: { ...EMPTY_LINE, points } } }, 'P', unit, IMAGE)).toEqual([
    { point: 0, kind: 'edge' },
  ])
})

// By hand: without a scale 4000 px are 40 mm, 0.01 mm each. Seen whole on 360 px, 0.09 wide each, a mm takes 9 px of the
// screen: fewer than 12, and a finger of 1.5 px is off by 0.17 mm.
test('a mark that was set on an image shown too small is asked for again', () => {
  const far = tooFar({ x: 5, y: 5, zoom: 0.09 }, unit, IMAGE)
  expect(far?.off_mm).toBeCloseTo(0.1667, 3)
  expect(far?.near.zoom).toBeCloseTo(0.24, 9)
  expect(tooFar({ x: 5, y: 5, zoom: 0.13 }, unit, IMAGE)).toBeUndefined()
  expect(tooFar({ x: 5, y: 5 }, unit, IMAGE)).toBeUndefined()
  // On a scale of 0.03 mm a pixel the same zoom shows 3 px a mm.
  expect(tooFar({ x: 5, y: 5, zoom: 0.13 }, { ...unit, columnMm: 0.03 }, IMAGE)?.off_mm).toBeCloseTo(0.346, 3)
})
