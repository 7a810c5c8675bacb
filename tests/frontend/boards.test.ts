import { expect, test } from 'vitest'
import { layOut, profile } from '@/parts/depth-board/geometry'
import { sideOf } from '@/parts/depth-board/meeting'
import { asDrawn } from '@/parts/record-board/record-board'
import shared from '../shared/boards.json'

type Outline = number[][]

const shape = (outline: Outline, end_mm: number | null) => ({
  end_mm,
  size: null,
  outline: outline.map(([from_reference_mm = 0, diameter_mm = 0]) => ({ from_reference_mm, diameter_mm })),
})

// The board on paper is the judge: tests/cases/test_board.py, which does the first of them by hand.
test.each(shared.cases)('$name', ({ width, height, canals, board, polygons }) => {
  const drawnBy = (kind: 'done' | 'planned') =>
    canals.map((canal) => {
      const end_mm = kind === 'done' ? canal.end_mm : canal.planned_end_mm
      return asDrawn({ ...canal, joins: canal.joins }, shape(canal[kind], end_mm), end_mm)
    })
  const [done, planned] = [drawnBy('done'), drawnBy('planned')]
  const laid = layOut(width, height, done, planned)
  for (const [key, value] of Object.entries(board)) expect(laid[key as keyof typeof laid]).toBeCloseTo(value, 9)
  for (const [index, polygon] of polygons.entries()) {
    for (const [kind, drawn] of [
      ['done', done],
      ['planned', planned],
    ] as const) {
      const canal = drawn[index]
      if (!canal) throw new Error('a canal without a polygon')
      const points = profile({ board: laid, index, canal, side: sideOf(drawn, index) }, canal.outline)
      expect(near(points, polygon[kind]), `${canal.canal} ${kind}: ${points}`).toBe(true)
    }
  }
})

/** Whether they are the same to the tenth of a pixel that is written. */
function near(points: string, written: string): boolean {
  const [a, b] = [points, written].map((each) => each.split(/[ ,]/).map(Number))
  return a?.length === b?.length && (a ?? []).every((value, i) => Math.abs(value - (b?.[i] ?? 0)) <= 0.11)
}
