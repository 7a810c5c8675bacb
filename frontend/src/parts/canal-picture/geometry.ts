import type { Board } from '@/parts/depth-board/geometry'
import type { Silhouette, Width } from '@/parts/depth-board/shape'

/** Of a canal being worked, what its picture shows; depths from the reference point. */
export interface WorkedCanal {
  readonly canal: string
  /** Its wall as it is now, from the orifice down. */
  readonly wall: readonly Width[]
  readonly end_mm: number | null
  /** Of what is in hand. */
  readonly stop_um: number | null
  /** Of what stands beside it on the same axis. */
  readonly deepest_mm?: number
}

/** The millimetres that a picture and its strip share. */
export interface Axis {
  readonly from_mm: number
  readonly to_mm: number
  readonly top: number
  readonly px_per_mm: number
  /** How many pixels a thumb is moved for one that the tip moves. */
  readonly geared: number
}

const TOP_PX = 30 // half the handle, which waits there
const BOTTOM_PX = 14
const PAST_STOP_MM = 2 // a depth past the stop is a fact too
const CROWN_MM = 6 // cut off where no wall says where the canal begins
const THUMB_PX = 9 // the least that a thumb in a wet glove is moved from one detent to the next
export const DETENT_UM = 500 // the resolution of a stop

/** The axis in a room of this height: from the orifice to a little past the canal's end and the stop. */
export function axisOf(height: number, { wall, end_mm, stop_um, deepest_mm = 0 }: WorkedCanal): Axis {
  const from_mm = Math.floor(wall[0]?.from_reference_mm ?? CROWN_MM)
  const stop_mm = (stop_um ?? 0) / 1000
  const ends_mm = [stop_mm + PAST_STOP_MM, (end_mm ?? 0) + 1, deepest_mm + 1, from_mm + PAST_STOP_MM]
  const to_mm = Math.ceil(Math.max(...ends_mm))
  const px_per_mm = Math.max(1, (height - TOP_PX - BOTTOM_PX) / (to_mm - from_mm))
  const geared = Math.max(1, Math.ceil(THUMB_PX / ((px_per_mm * DETENT_UM) / 1000)))
  return { from_mm, to_mm, top: TOP_PX, px_per_mm, geared }
}

export const yAt = (axis: Axis, um: number): number => axis.top + (um / 1000 - axis.from_mm) * axis.px_per_mm

const umAt = (axis: Axis, y: number): number => ((y - axis.top) / axis.px_per_mm + axis.from_mm) * 1000

/** Where the tip can be put: every half millimetre of the axis, and the stop wherever it is. */
export function detents({ from_mm, to_mm }: Axis, stop_um: number | null): number[] {
  const half = Array.from(
    { length: ((to_mm - from_mm) * 1000) / DETENT_UM + 1 },
    (_, i) => from_mm * 1000 + i * DETENT_UM,
  )
  return stop_um === null || half.includes(stop_um) ? half : [...half, stop_um].sort((a, b) => a - b)
}

const nearest = (all: readonly number[], um: number): number =>
  all.reduce((best, each) => (Math.abs(each - um) < Math.abs(best - um) ? each : best), all[0] ?? um)

/** The detent under a finger at this height of the strip. */
export const taken = (axis: Axis, all: readonly number[], y: number): number => nearest(all, umAt(axis, y))

/** Where a tip comes to from `from_um` when the finger has moved `by_px` down. */
export const dragged = (axis: Axis, all: readonly number[], from_um: number, by_px: number): number =>
  nearest(all, from_um + (by_px / axis.geared / axis.px_per_mm) * 1000)

/** So many detents deeper; less deep below zero. It stays on the strip. */
export function stepped(all: readonly number[], um: number, by: number): number {
  const next = by > 0 ? all.findIndex((each) => each > um) + by - 1 : all.findLastIndex((each) => each < um) + by + 1
  const none = by > 0 ? all.every((each) => each <= um) : all.every((each) => each >= um)
  return none ? um : (all[Math.min(all.length - 1, Math.max(0, next))] ?? um)
}

/** A board of the one canal on the axis, so that all is drawn as on the board of the tooth: true taper, one width. */
export function boardOf(axis: Axis, width: number, height: number, wall: readonly Width[], goesIn: Silhouette): Board {
  const { top, px_per_mm, from_mm, to_mm } = axis
  const widest_mm = Math.max(0.5, ...wall.map((p) => p.diameter_mm), ...goesIn.map((p) => p.diameter_mm))
  const widened = Math.max(1, Math.floor((2 * FILLED_SHARE * width) / (widest_mm * px_per_mm)) / 2)
  return {
    width,
    height,
    gutter: 0,
    bottom: BOTTOM_PX,
    column: width,
    deepest_mm: to_mm,
    px_per_mm,
    widened,
    top: top - from_mm * px_per_mm,
  }
}

const FILLED_SHARE = 0.5 // of the picture's width, by the widest that is drawn
