import { type Doubt, doubtsOf } from '@/marks/doubts'
import { type Draft, lineOf, type MarkSpot, pointsOf } from '@/panels/marks/draft'
import { inColumns, type Unit } from '@/panels/marks/unit'
import type { Near } from '@/parts/image-board/image-board'
import type { Size } from '@/parts/image-board/view'

/** What somebody is asked about a mark: it lies at the edge of the image, or its line runs as no canal does. */
export interface Ask {
  readonly point: number
  readonly kind: Doubt['kind'] | 'edge'
}

export function asksOf(draft: Draft, canal: string, unit: Unit, image: Size): Ask[] {
  const { points } = lineOf(draft, canal)
  const edge = points.flatMap(({ x, y }, point): Ask[] =>
    x <= 0 || y <= 0 || x >= image.width || y >= image.height ? [{ point, kind: 'edge' }] : [],
  )
  const most_deg = unit.figures?.turn_deg
  return most_deg ? [...edge, ...doubtsOf(inColumns(points, unit.rowPerColumn), most_deg)] : edge
}

const CLOSER = 2 // times as near as is asked for, so that it need not be asked twice

/** Where to look closer, and how far a finger is off as it is; undefined where a mark was set near enough. */
export interface TooFar {
  readonly near: Near
  readonly off_mm: number
}

export function tooFarOf(draft: Draft, of: string, number: number | undefined, unit: Unit, image: Size) {
  const mark = number === undefined ? undefined : pointsOf(draft, of)[number]
  return mark && tooFar(mark, unit, image)
}

/** Without a scale an image is taken to be as long as the largest there is. */
export function tooFar(mark: MarkSpot, { figures, columnMm, rowPerColumn }: Unit, image: Size): TooFar | undefined {
  const least = figures?.screen_px_per_mm_least
  if (!figures || !least || !mark.zoom) return undefined
  const mm = columnMm ?? figures.object_most_mm / Math.max(image.width, image.height * rowPerColumn)
  if (mark.zoom / mm >= least) return undefined
  return { near: { at: mark, zoom: CLOSER * least * mm }, off_mm: (figures.screen_spread_px / mark.zoom) * mm }
}
