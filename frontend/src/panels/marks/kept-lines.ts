import type { CanalShown, MarkingShown, Plan } from '@/api/shapes'
import type { LineSpot, Marked } from '@/parts/image-board/marked-line'
import type { WaitingMarking } from '@/store/images/marking-store'
import { type Draft, lineOf } from './draft'
import { draftOf } from './draft-of'
import { spotsOf } from './marked-lines'

type Line = MarkingShown['marks']['lines'][number]

/** What was marked last of every canal with what is planned for it, and what that put right, broken. */
export function keptLines(
  markings: readonly MarkingShown[],
  canals: readonly CanalShown[],
  plan: Plan | undefined,
): Marked[] {
  const latest = new Map(
    markings.flatMap((marking) => marking.marks.lines.map(({ canal }) => [canal, marking] as const)),
  )
  return [...latest].flatMap(([canal, last]) => {
    const before = markings.find(({ id }) => id === last.corrects_id)
    return [...drawn(before, canal, true), ...drawn(last, canal, false, spotsOn(last, canal, canals, plan))]
  })
}

/** The same while somebody marks: nothing twice, and broken what is being marked anew. */
export function behindDraft(
  draft: Draft,
  markings: readonly MarkingShown[],
  waiting: readonly WaitingMarking[],
  canals: readonly CanalShown[],
  plan: Plan | undefined,
): Marked[] {
  const sent = keptLines(markings, canals, plan).filter(({ broken }) => !broken)
  const here = waiting.flatMap(({ body }) => body.marks.lines ?? []).map((line) => markedOf(line as Line))
  const latest = new Map([...sent, ...here].map((line) => [line.name, line]))
  return [...latest.values()].flatMap((line): Marked[] => {
    const { points } = lineOf(draft, line.name)
    const same = points.length === line.points.length && points.every((at, i) => liesAt(at, line.points[i]))
    if (same) return []
    return [points.length === 0 ? line : { ...line, broken: true, nameFirst: true, spots: [] }]
  })
}

const liesAt = (at: { x: number; y: number }, other: { x: number; y: number } | undefined) =>
  at.x === other?.x && at.y === other.y

function drawn(
  marking: MarkingShown | undefined,
  canal: string,
  broken: boolean,
  spots: readonly LineSpot[] = [],
): Marked[] {
  const line = marking?.marks.lines.find((marked) => marked.canal === canal)
  if (!marking || !line) return []
  const name = broken ? `${canal} ${marking.number}` : canal
  return [{ ...markedOf(line), name, broken, nameFirst: broken, spots }]
}

const markedOf = ({ canal, points, orifice }: Line): Marked => ({
  name: canal,
  points: points.map(({ x_px, y_px }) => ({ x: x_px, y: y_px })),
  straightTo: orifice ?? 0,
  active: false,
})

function spotsOn(
  marking: MarkingShown,
  name: string,
  canals: readonly CanalShown[],
  plan: Plan | undefined,
): readonly LineSpot[] {
  const canal = canals.find((charted) => charted.name === name)
  const { column_mm, row_per_column } = marking.measured.scale
  const unit = { columnMm: column_mm ?? undefined, rowPerColumn: row_per_column }
  return canal ? spotsOf(lineOf(draftOf(marking), name), unit, false, canal, plan) : []
}
