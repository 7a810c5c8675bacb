import type { ImageMarks, Scale } from '@/api/shapes'
import { lengthOf, type Mark, placeOf, schneiderDeg } from '@/marks/line'
import type { Spot } from '@/parts/image-board/view'
import { readMm } from '@/parts/millimetres'
import { type Draft, type LineDraft, lineOf } from './draft'

/** Millimetres a pixel, by the known object that was marked, else by the file; no scale without either. */
export interface Unit {
  readonly columnMm: number | undefined
  readonly rowPerColumn: number
  readonly byKnown: boolean
}

export function unitOf(draft: Draft, file: Scale | undefined): Unit {
  const rowPerColumn = file?.row_per_column ?? 1
  const { points, lengthMm } = draft.known
  const length = readMm(lengthMm)
  if (points.length >= 2 && length !== undefined && length > 0) {
    const columns = lengthOf(inColumns(points, rowPerColumn))
    return { columnMm: columns > 0 ? length / columns : undefined, rowPerColumn, byKnown: true }
  }
  return { columnMm: file?.column_mm ?? undefined, rowPerColumn, byKnown: false }
}

/** What can be said of a line at once, before the server has measured it: no arithmetic of planning, only its length. */
export interface Said {
  readonly lengthMm: number | undefined
  readonly angleDeg: number | undefined
  readonly tipShortMm: number | undefined
}

export function saidOf(line: LineDraft, unit: Unit): Said {
  const marks = inColumns(line.points, unit.rowPerColumn)
  const { columnMm } = unit
  const end = marks.at(-1)
  const bends = line.leaves !== null && line.leaves > (line.orifice ?? 0) && line.leaves < marks.length - 1
  return {
    lengthMm: columnMm && marks.length >= 2 ? lengthOf(marks, line.orifice ?? 0) * columnMm : undefined,
    angleDeg:
      bends && end && line.leaves !== null
        ? schneiderDeg(marks.slice(line.orifice ?? 0, line.leaves + 1), end)
        : undefined,
    tipShortMm: columnMm && line.tip ? shortOf(line.tip, marks, unit.rowPerColumn) * columnMm : undefined,
  }
}

/** Where a distance from the reference point lies on the image. */
export function spotAt(line: LineDraft, unit: Unit, mm: number): Spot | undefined {
  if (!unit.columnMm) return undefined
  const found = placeOf(inColumns(line.points, unit.rowPerColumn), mm / unit.columnMm, line.orifice ?? 0)
  return found && { x: found[0], y: found[1] / unit.rowPerColumn }
}

/** The marks as the server takes them. */
export function marksOf(draft: Draft, canals: readonly { name: string; reference_point: string }[]): ImageMarks {
  const length = readMm(draft.known.lengthMm)
  const lines = canals
    .map(({ name, reference_point }) => ({ name, reference_point, line: lineOf(draft, name) }))
    .filter(({ line }) => line.points.length >= 2)
    .map(({ name, reference_point, line }) => ({
      canal: name,
      points: line.points.map(pixel),
      orifice: line.orifice,
      leaves: line.leaves,
      straight_again: line.straightAgain,
      tip: line.tip && pixel(line.tip),
      set_mm: readMm(line.setMm) ?? null,
      reference_point,
    }))
  const { what, points } = draft.known
  const known = points.length >= 2 && length ? { what, length_mm: length, points: points.map(pixel) } : null
  return { lines, known }
}

const pixel = ({ x, y }: Spot) => ({ x_px: x, y_px: y })

const inColumns = (points: readonly Spot[], rowPerColumn: number): Mark[] =>
  points.map(({ x, y }) => [x, y * rowPerColumn])

/** From the tip to the end in widths of a pixel; below 0 past it, by the way the canal's last part runs. */
function shortOf(tip: Spot, marks: readonly Mark[], rowPerColumn: number): number {
  const [before, end] = [marks.at(-2), marks.at(-1)]
  if (!before || !end) return 0
  const gap: Mark = [end[0] - tip.x, end[1] - tip.y * rowPerColumn]
  const along = gap[0] * (end[0] - before[0]) + gap[1] * (end[1] - before[1])
  return Math.sign(along) * Math.hypot(gap[0], gap[1])
}
