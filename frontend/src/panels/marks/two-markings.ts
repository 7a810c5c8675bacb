import type { MarkingShown, Shift } from '@/api/shapes'
import { lengthOf, type Mark, placeOf } from '@/marks/line'

export type Way = Shift['tube']

type Line = MarkingShown['marks']['lines'][number]

/** Canals that are marked on both images. */
export function onBoth(left: MarkingShown, right: MarkingShown): string[] {
  return left.marks.lines.map(({ canal }) => canal).filter((canal) => lineOf(right, canal) !== undefined)
}

/** Schneider's angle of a canal on this image, with its interval. */
export function bendOf(on: MarkingShown, canal: string) {
  return on.measured.lines.find((line) => line.canal === canal)?.bend?.schneider_deg
}

/** Whether a canal bends to the right on the image; undefined where it does not bend. */
export function bendsRight(on: MarkingShown, canal: string): boolean | undefined {
  const line = lineOf(on, canal)
  if (!line || line.leaves === null) return undefined
  const marks = lineMarks(on, line)
  const [from, leaves, end] = [marks[line.orifice ?? 0], marks[line.leaves], marks.at(-1)]
  if (!from || !leaves || !end) return undefined
  return (leaves[0] - from[0]) * (end[1] - leaves[1]) < (leaves[1] - from[1]) * (end[0] - leaves[0])
}

/** How far to the right one canal lies of another, both in the middle of their lengths; undefined without a scale. */
export function rightOfMm(on: MarkingShown, canal: string, other: string): number | undefined {
  const { column_mm } = on.measured.scale
  const [a, b] = [middleOf(on, canal), middleOf(on, other)]
  return column_mm !== null && a && b ? (a[0] - b[0]) * column_mm : undefined
}

/** How far apart two people marked the end of a canal on one image; undefined without a scale. */
export function endsApartMm(marking: MarkingShown, other: MarkingShown, canal: string): number | undefined {
  const { column_mm } = marking.measured.scale
  const [a, b] = [endOf(marking, canal), endOf(other, canal)]
  return column_mm !== null && a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) * column_mm : undefined
}

function endOf(on: MarkingShown, canal: string): Mark | undefined {
  const line = lineOf(on, canal)
  return line && lineMarks(on, line).at(-1)
}

function middleOf(on: MarkingShown, canal: string): Mark | undefined {
  const line = lineOf(on, canal)
  if (!line) return undefined
  const marks = lineMarks(on, line)
  return placeOf(marks, lengthOf(marks, line.orifice ?? 0) / 2, line.orifice ?? 0)
}

const lineOf = (on: MarkingShown, canal: string) => on.marks.lines.find((line) => line.canal === canal)

/** In widths of a pixel. */
function lineMarks({ measured }: MarkingShown, { points }: Line): Mark[] {
  return points.map(({ x_px, y_px }) => [x_px, y_px * measured.scale.row_per_column])
}
