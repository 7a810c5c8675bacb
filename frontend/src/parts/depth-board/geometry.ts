import type { BoardCanal, Silhouette, Width } from './shape'

export interface Board {
  readonly width: number
  readonly height: number
  readonly gutter: number
  readonly top: number
  readonly bottom: number
  readonly column: number
  readonly px_per_mm: number
  readonly deepest_mm: number
  /** How many times wider than long the drawing is; printed under it. */
  readonly widened: number
}

export const NOTE_PX = 12.5 // size of the small labels
export const NARROW_PX = 60 // a column below it has room for its name and its number alone
const GUTTER = 28
const RIGHT = 4
const WIDEST_COLUMN = 128
const FILLED_SHARE = 0.74 // of a column's width, by the widest canal

/** The board's scales for the room it is given; what is laid over from before and what goes in must fit too. */
export function layOut(
  width: number,
  height: number,
  canals: readonly BoardCanal[],
  before: readonly BoardCanal[] = [],
  instruments: Iterable<Silhouette> = [],
): Board {
  const drawn = [...canals, ...before]
  const points = drawn.flatMap((c) => c.outline)
  const open = canals.flatMap((c) => (c.provisional ? (c.length.estimated?.most_mm ?? []) : []))
  const depths = [10, ...open, ...drawn.map((c) => c.end_mm ?? 0), ...points.map((p) => p.from_reference_mm)]
  const scales = scalesOf({ width, height }, canals, Math.max(...depths))
  const { column, px_per_mm } = scales
  const initialShape = canals.flatMap((c) => c.expectation?.initial_shape.points ?? [])
  const goesIn = [...instruments].flat()
  const widths_mm = [...points.map((p) => p.diameter_mm), ...initialShape.map((p) => p.wide_mm)]
  const widest_mm = Math.max(0.5, ...widths_mm, ...goesIn.map((p) => p.diameter_mm))
  const widened = Math.max(1, Math.floor((2 * FILLED_SHARE * column) / (widest_mm * px_per_mm)) / 2)
  return { ...scales, widened }
}

/** Columns as wide as the room allows, and a millimetre as high: names stand above, numbers below. */
export function scalesOf(
  { width, height }: { readonly width: number; readonly height: number },
  canals: readonly { readonly reference_point: string }[],
  deepest_mm: number,
): Omit<Board, 'widened'> {
  const room = width - GUTTER - RIGHT
  const column = Math.min(WIDEST_COLUMN, room / Math.max(1, canals.length))
  const gutter = GUTTER + (room - column * canals.length) / 2
  const broken = canals.some((c) => lines(c.reference_point, NOTE_PX, column - 2).length > 1)
  const top = broken && column >= NARROW_PX ? 54 : 42
  const bottom = column < NARROW_PX ? 28 : 52
  const px_per_mm = Math.max(4, (height - top - bottom) / deepest_mm)
  return { width, height, gutter, top, bottom, column, px_per_mm, deepest_mm }
}

export const yOf = (board: Board, mm: number): number => board.top + mm * board.px_per_mm

export const centreOf = (board: Board, index: number): number => board.gutter + board.column * (index + 0.5)

const LEANING_MM = 5 // over the last millimetres a joining canal leans towards the one it joins
const LEAN_SHARE = 0.14

/** How far the middle of a canal is drawn aside at a depth: a joining canal leans towards the one it joins. */
export function leanAt(board: Board, mm: number, end_mm: number, side: -1 | 0 | 1): number {
  const share = Math.max(0, (mm - (end_mm - LEANING_MM)) / LEANING_MM)
  return side * LEAN_SHARE * board.column * Math.min(1, share) ** 2
}

export interface Place {
  readonly board: Board
  readonly index: number
  readonly canal: Pick<BoardCanal, 'end_mm'>
  readonly side: -1 | 0 | 1
}

const halfOf = (board: Board, diameter_mm: number) => (diameter_mm * board.widened * board.px_per_mm) / 2

/** The middle of a canal at a depth. */
function middleAt({ board, index, canal, side }: Place, mm: number, deepest_mm: number): number {
  return centreOf(board, index) + leanAt(board, mm, canal.end_mm ?? deepest_mm, side)
}

/** An outline at true taper, widened by the board's factor, as the points of a polygon; empty where there is none. */
export function profile(place: Place, outline: readonly Width[]): string {
  const { board, canal } = place
  // Below a junction only the hand's way goes on; the way there is drawn as the meeting.
  const shown = within(outline, 0, canal.end_mm ?? Number.POSITIVE_INFINITY)
  const last = shown.at(-1)
  if (!last) return ''
  const deepest_mm = last.from_reference_mm
  const sides = withSteps(shown, (canal.end_mm ?? deepest_mm) - LEANING_MM).map((p) => ({
    middle: middleAt(place, p.from_reference_mm, deepest_mm),
    half: halfOf(board, p.diameter_mm),
    y: yOf(board, p.from_reference_mm),
  }))
  const right = sides.map(({ middle, half, y }) => [middle + half, y] as const)
  const left = sides.map(({ middle, half, y }) => [middle - half, y] as const)
  return [...right, ...left.reverse()].map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')
}

/** Where the drawing of the access ends: at the orifice, as wide as the canal is there. */
export function orifice({ board }: Place, outline: readonly Width[]): { y: number; half: number } | undefined {
  const first = outline[0]
  return first && { y: yOf(board, first.from_reference_mm), half: halfOf(board, first.diameter_mm) }
}

/** An instrument with its tip at a depth, top first; what would stand above the reference point is cut off. */
export function standing(silhouette: Silhouette, tip_mm: number): Width[] {
  const widths = silhouette.map((p) => ({ from_reference_mm: tip_mm - p.from_tip_mm, diameter_mm: p.diameter_mm }))
  return within(widths.reverse(), 0, tip_mm)
}

/** The part of an outline between two depths, cut where it crosses them. */
function within(outline: readonly Width[], from_mm: number, to_mm: number): Width[] {
  return outline.flatMap((point, i) => {
    const next = outline[i + 1]
    const at = point.from_reference_mm
    const crossed = [from_mm, to_mm].filter((mm) => next && at < mm && mm < next.from_reference_mm)
    return [...(from_mm <= at && at <= to_mm ? [point] : []), ...crossed.map((mm) => between(point, next ?? point, mm))]
  })
}

function between(a: Width, b: Width, mm: number): Width {
  const share = (mm - a.from_reference_mm) / (b.from_reference_mm - a.from_reference_mm)
  return { from_reference_mm: mm, diameter_mm: a.diameter_mm + share * (b.diameter_mm - a.diameter_mm) }
}

/** The outline with a point every millimetre below `from_mm`, so that a leaning canal is drawn as a curve. */
function withSteps(outline: readonly Width[], from_mm: number): Width[] {
  return outline.flatMap((point, i) => {
    const next = outline[i + 1]
    const more: Width[] = []
    const first = Math.ceil(Math.max(from_mm, point.from_reference_mm))
    for (let mm = first; next && mm < next.from_reference_mm; mm += 1) {
      if (mm > point.from_reference_mm) more.push(between(point, next, mm))
    }
    return [point, ...more]
  })
}

const LETTER_SHARE = 0.56 // width of a letter of our face, as a share of its size

/** A label in one line if it fits the column, else one word a line. */
export function lines(text: string, size: number, room: number): string[] {
  return text.length * size * LETTER_SHARE <= room ? [text] : text.split(' ')
}
