import { expect, test } from 'vitest'
import type { Edit } from '@/parts/image-board/gestures'
import { squareEdit, squareLine, squareSize } from '@/parts/image-board/square'

// By hand: pixels twice as tall as wide, so a row counts two columns.

test('an image and what is marked on it are as tall as they are', () => {
  expect(squareSize({ width: 100, height: 100 }, 2)).toEqual({ width: 100, height: 200 })
  const line = { name: 'P', straightTo: 0, active: true, points: [{ x: 10, y: 20 }] }
  const spots = [{ at: { x: 5, y: 7 }, says: 'tip', kind: 'tip' as const }]
  expect(squareLine({ ...line, spots }, 2)).toMatchObject({
    points: [{ x: 10, y: 40 }],
    spots: [{ at: { x: 5, y: 14 } }],
  })
})

test('a mark that is set or moved is told in pixels', () => {
  const edits: unknown[] = []
  const edit: Edit = {
    marks: [{ x: 1, y: 3 }],
    picked: 0,
    onPick: (number) => edits.push(number),
    onMove: (number, to) => edits.push([number, to]),
    onMoved: () => undefined,
    onPlace: (at) => edits.push(at),
    onOutside: () => undefined,
  }
  const square = squareEdit(edit, 2)
  expect(square.marks).toEqual([{ x: 1, y: 6 }])
  square.onMove(0, { x: 2, y: 8, zoom: 0.5 })
  square.onPlace({ x: 3, y: 10, zoom: 2 })
  square.onPick(0)
  expect(edits).toEqual([[0, { x: 2, y: 4, zoom: 0.5 }], { x: 3, y: 5, zoom: 2 }, 0])
})
