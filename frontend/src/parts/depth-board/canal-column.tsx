import { mm } from '@/parts/millimetres'
import { words } from '@/words/en'
import { type Board, centreOf, leanAt, lines, NOTE_PX, profile, yOf } from './geometry'
import type { BoardCanal, CoronalStop } from './shape'

interface Props {
  board: Board
  index: number
  canal: BoardCanal
  before: BoardCanal | undefined
  coronal: CoronalStop | undefined
  side: -1 | 0 | 1
  hatch: string
  picked: boolean
}

/** One canal: access, profile, coronal stop, end and its label. */
export function CanalColumn({ board, index, canal, before, coronal, side, hatch, picked }: Props) {
  const centre = centreOf(board, index)
  const drawn = profile(board, index, canal, side)
  const old = before && profile(board, index, before, side)
  const firm = canal.provisional ? 'estimate' : 'firm'
  return (
    <g class="canal" data-length={firm} data-picked={picked}>
      {drawn && (
        <rect
          x={centre - drawn.topHalf}
          y={board.top}
          width={drawn.topHalf * 2}
          height={drawn.topY - board.top}
          fill={`url(#${hatch})`}
        />
      )}
      {drawn && <polygon class="shape" points={drawn.points} />}
      {old && old.points !== drawn?.points && <polygon class="shape-before" points={old.points} />}
      {coronal && <CoronalMark board={board} centre={centre} stop_mm={coronal.stop_mm} />}
      <End board={board} centre={centre} canal={canal} before={before} side={side} />
    </g>
  )
}

function CoronalMark({ board, centre, stop_mm }: { board: Board; centre: number; stop_mm: number }) {
  const y = yOf(board, stop_mm)
  const half = board.column * 0.42
  return (
    <g class="coronal">
      <line x1={centre - half} x2={centre + half} y1={y} y2={y} />
      <text x={centre} y={y - 4}>
        {mm(stop_mm)}
      </text>
    </g>
  )
}

type EndProps = Pick<Props, 'board' | 'canal' | 'before' | 'side'> & { centre: number }

function End({ board, centre, canal, before, side }: EndProps) {
  if (canal.end_mm === null) {
    return (
      <text class="no-length halo" y={yOf(board, 0) + 28}>
        {words.board.noLength.split(' ').map((word, i) => (
          <tspan key={word} x={centre} dy={i ? 14 : 0}>
            {word}
          </tspan>
        ))}
      </text>
    )
  }
  const y = yOf(board, canal.end_mm)
  const middle = centre + leanAt(board, canal.end_mm, canal.end_mm, side)
  const half = Math.min(board.column * 0.38, 40)
  const kind = canal.joins !== null && canal.junction_mm !== null ? 'junction' : canal.provisional ? 'estimate' : 'firm'
  return (
    <g>
      {before && before.end_mm !== null && before.end_mm !== canal.end_mm && (
        <line class="end-before" x1={centre - half} x2={centre + half} {...level(yOf(board, before.end_mm))} />
      )}
      <line class="end" data-kind={kind} x1={middle - half} x2={middle + half} {...level(y)} />
      <EndLabel board={board} centre={centre} canal={canal} before={before} y={y} />
    </g>
  )
}

const level = (y: number) => ({ y1: y, y2: y })

function EndLabel({ board, centre, canal, before, y }: Omit<EndProps, 'side'> & { y: number }) {
  const was = before?.end_mm
  const notes = [
    ...(canal.provisional ? [words.board.estimate] : []),
    ...(canal.joins !== null && canal.junction_mm !== null ? [words.board.joins(canal.joins)] : []),
    ...(was !== undefined && was !== null && was !== canal.end_mm ? [words.board.was(mm(was))] : []),
  ].flatMap((note) => lines(note, NOTE_PX, board.column - 2))
  return (
    <text class="halo" x={centre} y={y + 17}>
      <tspan class="end-number">{mm(canal.end_mm ?? 0)}</tspan>
      {notes.map((note, i) => (
        <tspan key={`${i}${note}`} class="end-note" x={centre} dy={i ? 13 : 14}>
          {note}
        </tspan>
      ))}
    </text>
  )
}
