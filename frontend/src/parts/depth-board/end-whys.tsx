import { mm } from '@/parts/millimetres'
import { Tapped } from '@/parts/reason/reasons'
import { words } from '@/words/en'
import { type Board, yOf } from './geometry'
import type { BoardCanal } from './shape'

const ABOVE = 4 // the touch begins just above the end's line and covers its number
const TOUCH = 48

/** Over the drawing: the number at each canal's end can be touched to see why. */
export function EndWhys({ board, canals }: { board: Board; canals: readonly BoardCanal[] }) {
  return canals.map(({ canal, end_mm }, i) => {
    if (end_mm === null) return null
    const left = board.gutter + board.column * i
    const style = { left, top: yOf(board, end_mm) - ABOVE, width: board.column, height: TOUCH }
    return <Tapped key={canal} canal={canal} of="end_mm" title={words.because.end} value={mm(end_mm)} style={style} />
  })
}
