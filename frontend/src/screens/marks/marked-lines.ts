import type { CanalShown } from '@/api/shapes'
import type { Marked } from '@/parts/image-board/marked-line'
import { words } from '@/words/en'
import { lineOf, SCALE } from './draft'
import { spotAt, type Unit } from './measured'
import type { Marks } from './use-marks'

/** Every line as the board draws it, the one that is worked on last; with the tip and the stop that is known. */
export function markedLines({ draft, active, picked }: Marks, canals: readonly CanalShown[], unit: Unit): Marked[] {
  const { rowPerColumn } = unit
  const lines = canals.map((canal): Marked => {
    const line = lineOf(draft, canal.name)
    const stop = canal.length?.stop_mm
    const end = stop == null ? undefined : spotAt(line, unit, stop)
    const spots = [
      line.tip && { at: line.tip, says: words.marks.tip },
      end && { at: end, says: words.marks.stopAt(stop ?? 0) },
    ].filter((spot) => !!spot)
    const here = active === canal.name
    return {
      name: canal.name,
      points: line.points,
      rowPerColumn,
      straightTo: line.orifice ?? 0,
      active: here,
      picked: here ? picked : undefined,
      spots,
    }
  })
  const known: Marked = {
    name: words.marks.scale,
    nameFirst: true,
    points: draft.known.points,
    rowPerColumn,
    straightTo: 0,
    active: active === SCALE,
    picked: active === SCALE ? picked : undefined,
  }
  return [...lines, known].sort((a, b) => Number(a.active) - Number(b.active))
}
