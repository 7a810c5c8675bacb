import type { MarkingShown } from '@/api/shapes'
import type { Marked } from '@/parts/image-board/marked-line'

/** The last marking's lines, and those of the one it puts right, broken. */
export function keptLines(markings: readonly MarkingShown[]): Marked[] {
  const last = markings.at(-1)
  const before = markings.find(({ id }) => id === last?.corrects)
  return [...drawn(before, true), ...drawn(last, false)]
}

function drawn(marking: MarkingShown | undefined, broken: boolean): Marked[] {
  if (!marking) return []
  return marking.marks.lines.map((line) => ({
    name: broken ? `${line.canal} ${marking.number}` : line.canal,
    points: line.points.map(({ x_px, y_px }) => ({ x: x_px, y: y_px })),
    straightTo: line.orifice ?? 0,
    active: false,
    broken,
    nameFirst: broken,
  }))
}
