import { type Board, centreOf, leanAt, yOf } from './geometry'
import type { BoardCanal } from './shape'

/** On which side the canal lies that this one joins: −1 left, 1 right, 0 where it joins none. */
export function sideOf(canals: readonly BoardCanal[], index: number): -1 | 0 | 1 {
  const canal = canals[index]
  const main = canals.findIndex((c) => c.canal === canal?.joins)
  if (!canal || canal.junction_mm === null || main < 0 || main === index) return 0
  return main < index ? -1 : 1
}

interface Props {
  board: Board
  canals: readonly BoardCanal[]
  index: number
}

/** The way from a joining canal's end into the canal it joins, as far from the common terminus as it was measured. */
export function Meeting({ board, canals, index }: Props) {
  const canal = canals[index]
  const side = sideOf(canals, index)
  const mainIndex = canals.findIndex((c) => c.canal === canal?.joins)
  const main = canals[mainIndex]
  if (!canal || !main || side === 0 || canal.end_mm === null || canal.junction_mm === null) return null
  if (main.end_mm === null || canal.length.working_length_mm === null) return null
  const from_terminus_mm = canal.length.working_length_mm - canal.junction_mm
  const half = Math.min(board.column * 0.38, 40)
  const x1 = centreOf(board, index) + leanAt(board, canal.end_mm, canal.end_mm, side) + side * half
  const y1 = yOf(board, canal.end_mm)
  const x2 = centreOf(board, mainIndex) - side * 3
  const y2 = Math.max(y1 + 10, yOf(board, main.end_mm - from_terminus_mm / 2))
  return <path class="meeting" d={`M${x1} ${y1}C${x1 + side * 14} ${y1} ${x2 - side * 18} ${y2 - 4} ${x2} ${y2}`} />
}
