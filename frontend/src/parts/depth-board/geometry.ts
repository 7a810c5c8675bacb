import type { BoardCanal } from './shape'

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

export const NOTE_PX = 12 // size of the small labels
const GUTTER = 28
const RIGHT = 4
const WIDEST_COLUMN = 128
const FILLED_SHARE = 0.74 // of a column's width, by the widest canal

/** The board's scales for the room it is given; what is laid over from before must fit too. */
export function layOut(
  width: number,
  height: number,
  canals: readonly BoardCanal[],
  before: readonly BoardCanal[] = [],
): Board {
  const room = width - GUTTER - RIGHT
  const column = Math.min(WIDEST_COLUMN, room / Math.max(1, canals.length))
  const gutter = GUTTER + (room - column * canals.length) / 2
  const narrow = canals.some((c) => lines(c.reference_point, NOTE_PX, column - 2).length > 1)
  const top = narrow ? 54 : 42
  const bottom = column < 68 ? 60 : 52
  const drawn = [...canals, ...before]
  const points = drawn.flatMap((c) => c.outline)
  const depths = [10, ...drawn.map((c) => c.end_mm ?? 0), ...points.map((p) => p.from_reference_mm)]
  const deepest_mm = Math.max(...depths)
  const px_per_mm = Math.max(4, (height - top - bottom) / deepest_mm)
  const widest_mm = Math.max(0.5, ...points.map((p) => p.diameter_mm))
  const widened = Math.max(1, Math.floor((2 * FILLED_SHARE * column) / (widest_mm * px_per_mm)) / 2)
  return { width, height, gutter, top, bottom, column, px_per_mm, deepest_mm, widened }
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

export interface Drawn {
  readonly points: string
  readonly topY: number
  readonly topHalf: number
  readonly endHalf: number
}

/** The canal's profile at true taper, widened by the board's factor; nothing where there is no outline. */
export function profile(board: Board, index: number, canal: BoardCanal, side: -1 | 0 | 1): Drawn | undefined {
  // Below a junction only the hand's way goes on; the way there is drawn as the meeting.
  const shown = canal.outline.filter((p) => canal.end_mm === null || p.from_reference_mm <= canal.end_mm)
  const first = shown[0]
  const last = shown.at(-1)
  if (!first || !last) return undefined
  const half = (d: number) => (d * board.widened * board.px_per_mm) / 2
  const end = canal.end_mm ?? last.from_reference_mm
  const at = (mm: number) => centreOf(board, index) + leanAt(board, mm, end, side)
  const outline = withSteps(shown, end - LEANING_MM)
  const right = outline.map((p) => [at(p.from_reference_mm) + half(p.diameter_mm), yOf(board, p.from_reference_mm)])
  const left = outline.map((p) => [at(p.from_reference_mm) - half(p.diameter_mm), yOf(board, p.from_reference_mm)])
  const points = [...right, ...left.reverse()].map(([x = 0, y = 0]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')
  return {
    points,
    topY: yOf(board, first.from_reference_mm),
    topHalf: half(first.diameter_mm),
    endHalf: half(last.diameter_mm),
  }
}

type Point = BoardCanal['outline'][number]

/** The outline with a point every millimetre below `from_mm`, so that a leaning canal is drawn as a curve. */
function withSteps(outline: readonly Point[], from_mm: number): Point[] {
  return outline.flatMap((point, i) => {
    const next = outline[i + 1]
    if (!next) return [point]
    const span = next.from_reference_mm - point.from_reference_mm
    const between: Point[] = []
    for (let mm = Math.ceil(Math.max(from_mm, point.from_reference_mm)); mm < next.from_reference_mm; mm += 1) {
      if (span <= 0 || mm <= point.from_reference_mm) continue
      const share = (mm - point.from_reference_mm) / span
      const diameter_mm = point.diameter_mm + share * (next.diameter_mm - point.diameter_mm)
      between.push({ from_reference_mm: mm, diameter_mm })
    }
    return [point, ...between]
  })
}

const LETTER_SHARE = 0.56 // width of a letter of our face, as a share of its size

/** A label in one line if it fits the column, else one word a line. */
export function lines(text: string, size: number, room: number): string[] {
  return text.length * size * LETTER_SHARE <= room ? [text] : text.split(' ')
}
