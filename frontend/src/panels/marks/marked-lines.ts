import type { CanalShown, Plan } from '@/api/shapes'
import type { LineSpot, Marked } from '@/parts/image-board/marked-line'
import { mm, readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import { type LineDraft, lineOf, SCALE } from './draft'
import { spotAt } from './measured'
import type { Unit } from './unit'
import type { Marks } from './use-marks'

/** Every line as the board draws it, the one that is worked on last; with the tip, and what is planned for it. */
export function markedLines(
  { draft, active, picked }: Marks,
  canals: readonly CanalShown[],
  unit: Unit,
  plan: Plan | undefined,
): Marked[] {
  const lines = canals.map((canal): Marked => {
    const line = lineOf(draft, canal.name)
    const here = active === canal.name
    return {
      name: canal.name,
      points: line.points,
      straightTo: line.orifice ?? 0,
      active: here,
      picked: here ? picked : undefined,
      spots: spotsOf(line, unit, here, canal, plan),
    }
  })
  const known: Marked = {
    name: words.marks.scale,
    nameFirst: true,
    points: draft.known.points,
    straightTo: 0,
    active: active === SCALE,
    picked: active === SCALE ? picked : undefined,
  }
  // What is not marked has nothing to draw; what was kept of it is drawn in its place.
  return [...lines, known].filter(({ points }) => points.length > 0).sort((a, b) => Number(a.active) - Number(b.active))
}

/** Where the work will end and the tip was marked; of the line that is worked on, also the other stops. */
export function spotsOf(
  line: LineDraft,
  unit: Pick<Unit, 'columnMm' | 'rowPerColumn'>,
  here: boolean,
  canal: CanalShown,
  plan: Plan | undefined,
): readonly LineSpot[] {
  const planned = plan?.canals.find((planned) => planned.canal === canal.name)?.end_mm
  const end_mm = canal.length?.stop_mm ?? planned
  const set_mm = readMm(line.setMm)
  const at = (along_mm: number | null | undefined) => (along_mm == null ? undefined : spotAt(line, unit, along_mm))
  const others = here && plan ? stopsOf(plan, canal.name).filter((stop_mm) => stop_mm !== end_mm) : []
  const spots: readonly (Omit<LineSpot, 'at'> & { at: LineSpot['at'] | undefined })[] = [
    ...others.map((stop_mm) => ({ at: at(stop_mm), says: mm(stop_mm), kind: 'stop' as const })),
    { at: at(end_mm), says: words.marks.endAt(mm(end_mm ?? 0)), kind: 'end' },
    { at: line.tip ? at(set_mm) : undefined, says: words.marks.tipExpected(mm(set_mm ?? 0)), kind: 'expected' },
    { at: line.tip ?? undefined, says: words.marks.tip, kind: 'tip' },
  ]
  return spots.filter((spot): spot is LineSpot => spot.at !== undefined)
}

/** Every stop that the plan has in the canal, once each. */
function stopsOf(plan: Plan, canal: string): number[] {
  const stops = plan.stop_table.flatMap((row) => row.stops.filter((stop) => stop.canal === canal))
  return [...new Set(stops.map(({ stop_mm }) => stop_mm))]
}
