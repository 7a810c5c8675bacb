import type { CanalShown, MarkingShown, Plan } from '@/api/shapes'
import type { LineSpot, Marked } from '@/parts/image-board/marked-line'
import { lineOf } from './draft'
import { draftOf } from './draft-of'
import { spotsOf } from './marked-lines'

/** The last marking's lines with what is planned for them, and those of the one it puts right, broken. */
export function keptLines(
  markings: readonly MarkingShown[],
  canals: readonly CanalShown[],
  plan: Plan | undefined,
): Marked[] {
  const last = markings.at(-1)
  const before = markings.find(({ id }) => id === last?.corrects)
  const spots = (canal: string) => (last ? spotsOn(last, canal, canals, plan) : [])
  return [...drawn(before, true, () => []), ...drawn(last, false, spots)]
}

function drawn(
  marking: MarkingShown | undefined,
  broken: boolean,
  spots: (canal: string) => readonly LineSpot[],
): Marked[] {
  if (!marking) return []
  return marking.marks.lines.map((line) => ({
    name: broken ? `${line.canal} ${marking.number}` : line.canal,
    points: line.points.map(({ x_px, y_px }) => ({ x: x_px, y: y_px })),
    straightTo: line.orifice ?? 0,
    active: false,
    broken,
    nameFirst: broken,
    spots: spots(line.canal),
  }))
}

function spotsOn(
  marking: MarkingShown,
  name: string,
  canals: readonly CanalShown[],
  plan: Plan | undefined,
): readonly LineSpot[] {
  const canal = canals.find((one) => one.name === name)
  const { column_mm, row_per_column } = marking.measured.scale
  const unit = { columnMm: column_mm ?? undefined, rowPerColumn: row_per_column }
  return canal ? spotsOf(lineOf(draftOf(marking), name), unit, false, canal, plan) : []
}
