import { render } from '@testing-library/preact'
import { expect, test } from 'vitest'

import { MarkedLine } from '@/parts/image-board/marked-line'
import { standingApart } from '@/parts/image-board/view'
import { percent } from '@/screens/new-case/new-case-fields'
import { words } from '@/words/en'

const VIEW = { zoom: 1, x: 0, y: 0 }
const ROOM = { width: 340, height: 400 }

test('labels keep their heights where there is room, and move up where there is none', () => {
  expect(standingApart([10, 40, 100], 15)).toEqual([10, 40, 100])
  expect(standingApart([100, 96, 92], 15)).toEqual([100, 85, 70])
  // Those above are pushed only as far as they have to be.
  expect(standingApart([60, 90, 98], 15)).toEqual([60, 83, 98])
  expect(standingApart([50, 50], 15).toSorted((a, b) => a - b)).toEqual([35, 50])
  expect(standingApart([], 15)).toEqual([])
})

test('stops that lie close together are read one by one, the end at its place', () => {
  const spots = [19, 18.5, 18, 17].map((stop_mm) => ({
    at: { x: 100, y: stop_mm * 10 },
    says: stop_mm === 19 ? 'end 19.0' : String(stop_mm),
    kind: stop_mm === 19 ? ('end' as const) : ('stop' as const),
  }))
  const points = [
    { x: 100, y: 20 },
    { x: 100, y: 190 },
  ]
  const line = { name: 'MB', points, straightTo: 0, active: true, spots }
  const { container } = render(
    <svg>
      <title>MB</title>
      <MarkedLine line={line} view={VIEW} room={ROOM} />
    </svg>,
  )
  const heights = [...container.querySelectorAll('.spot')].map((spot) => {
    const [, y] = (spot.getAttribute('transform') ?? '').match(/ ([\d.]+)\)/) ?? []
    return Number(y) + Number(spot.querySelector('text')?.getAttribute('y'))
  })
  expect(heights[0]).toBe(194)
  for (const [i, y] of heights.slice(1).entries()) expect((heights[i] ?? 0) - y).toBeGreaterThanOrEqual(15)
  // Whoever stands far from its place is led back to it.
  expect(container.querySelectorAll('.leader')).toHaveLength(2)
})

test('a number and its per cent sign stay on one line', () => {
  const said = [
    words.marks.scaleOff(95, 2.7),
    words.marks.ends(90),
    words.size.percent(12),
    percent(0.1, 0.2, 0.3),
    percent(0.1, null, 0.3),
  ]
  for (const sentence of said) {
    expect(sentence).toContain('\u00a0%')
    expect(sentence).not.toContain(' %')
  }
})
