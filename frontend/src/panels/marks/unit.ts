import type { MarkFigures, Scale } from '@/api/shapes'
import { lengthOf, type Mark } from '@/marks/line'
import { bySlips } from '@/marks/sure'
import type { Spot } from '@/parts/image-board/view'
import { readMm } from '@/units/millimetres'
import type { Draft, KnownDraft, MarkSpot } from './draft'

/** Why a known object that was marked gives no scale. */
type Fault = 'length' | 'close' | 'pixel'

/** Millimetres a pixel, by the known object that was marked, else by the file; no scale without either. */
export interface Unit {
  readonly columnMm: number | undefined
  readonly rowPerColumn: number
  readonly byKnown: boolean
  /** One standard deviation, as a share of any length. */
  readonly share: number | undefined
  readonly fault?: Fault
  /** Left out as long as the server was never reached: then nothing says how sure a number is. */
  readonly figures: MarkFigures | undefined
}

export function unitOf(draft: Draft, file: Scale | undefined, figures: MarkFigures | undefined): Unit {
  const rowPerColumn = file?.row_per_column ?? 1
  const lengthMm = readMm(draft.known.lengthMm)
  if (draft.known.points.length >= 2 && lengthMm !== undefined && lengthMm > 0)
    return byKnown(draft.known, lengthMm, rowPerColumn, figures)
  const { column_mm, spread_share } = file ?? {}
  return { columnMm: column_mm ?? undefined, rowPerColumn, byKnown: false, share: spread_share ?? undefined, figures }
}

/** By the server's rule (`planning/radiograph/scale.py`), so that what it would refuse is refused at once. */
function byKnown(
  { what, points }: KnownDraft,
  lengthMm: number,
  rowPerColumn: number,
  figures: MarkFigures | undefined,
): Unit {
  const marks = inColumns(points, rowPerColumn)
  const off = figures && bySlips((moved) => lengthOf(moved), marks, slipsOf(points, figures, rowPerColumn))
  const columns = lengthOf(marks) - (off?.more ?? 0)
  const unit = { columnMm: lengthMm / columns, rowPerColumn, byKnown: true, share: undefined, figures }
  const none = { ...unit, columnMm: undefined }
  if (!(columns > 0)) return { ...none, fault: 'close' }
  if (!figures || !off) return unit
  if (lengthMm < figures.object_least_mm || lengthMm > figures.object_most_mm) return { ...none, fault: 'length' }
  if (columns * figures.object_off_share <= off.sd) return { ...none, fault: 'close' }
  const ends = [unit.columnMm, unit.columnMm * rowPerColumn]
  if (ends.some((px) => px < figures.pixel_least_mm || px > figures.pixel_most_mm)) return { ...none, fault: 'pixel' }
  return { ...unit, share: Math.hypot(off.sd / columns, figures[`${what}_spread_mm`] / lengthMm) }
}

/** Marks in widths of a pixel. */
export const inColumns = (points: readonly Spot[], rowPerColumn: number): Mark[] =>
  points.map(({ x, y }) => [x, y * rowPerColumn])

/** How far each mark is off across and down, in widths of a pixel: by how large the image was shown at its touch. */
export const slipsOf = (points: readonly MarkSpot[], figures: MarkFigures, rowPerColumn: number): Mark[] =>
  points.map(({ zoom }) => {
    // What was kept from an older server has no such figures.
    if (!zoom || !figures.screen_spread_px) return [figures.tapped_px, figures.tapped_px * rowPerColumn]
    const byFinger = figures.screen_spread_px / zoom
    return [Math.hypot(byFinger, figures.pixel_spread_px), Math.hypot(byFinger, figures.pixel_spread_px * rowPerColumn)]
  })
