import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { type Board, centreOf, leanAt, lines, NARROW_PX, NOTE_PX, type Place, yOf } from './geometry'
import { type BoardCanal, lengthsOf } from './shape'

interface Props {
  place: Place
  canal: BoardCanal
  before: BoardCanal | undefined
}

/** Where a canal's shaping ends: the line, its number, and what it is. */
export function CanalEnd({ place, canal, before }: Props) {
  const { board, index, side } = place
  const centre = centreOf(board, index)
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
      {canal.provisional && canal.length.estimated && (
        <Between board={board} x={middle} half={half} ends={canal.length.estimated} />
      )}
      <line class="end" data-kind={kind} x1={middle - half} x2={middle + half} {...level(y)} />
      <EndLabel place={place} canal={canal} before={before} />
    </g>
  )
}

/** Between what the tooth ends, as far as its image tells. */
function Between({ board, x, half, ends }: { board: Board; x: number; half: number; ends: Ends }) {
  const [least, most] = [yOf(board, ends.least_mm), yOf(board, ends.most_mm)]
  return (
    <path
      class="end-between"
      d={`M${x - half} ${least}h${2 * half}M${x} ${least}V${most}M${x - half} ${most}h${2 * half}`}
    />
  )
}

type Ends = NonNullable<BoardCanal['length']['estimated']>

const level = (y: number) => ({ y1: y, y2: y })

function EndLabel({ place: { board, index }, canal, before }: Props) {
  const x = centreOf(board, index)
  const was = before?.end_mm
  const notes = [
    ...(canal.joins !== null && canal.junction_mm !== null ? [words.board.joins(canal.joins)] : []),
    ...(was !== undefined && was !== null && was !== canal.end_mm ? [words.board.was(mm(was))] : []),
  ].flatMap((note) => lines(note, NOTE_PX, board.column - 2))
  return (
    <EndNumber
      board={board}
      x={x}
      end_mm={canal.end_mm ?? 0}
      says={lengthsOf(canal.end_mm ?? 0, canal.length, !canal.provisional)}
      notes={notes}
    />
  )
}

interface EndNumberProps {
  board: Board
  x: number
  end_mm: number
  /** The number; several where readings disagree. */
  says: readonly string[]
  /** What else there is to say, where there is room. */
  notes?: readonly string[]
}

const LINE_PX = 14

/** A number under the end of a canal, and what it is. */
export function EndNumber({ board, x, end_mm, says, notes = [] }: EndNumberProps) {
  const narrow = board.column < NARROW_PX
  return (
    <text class="halo" x={x} y={yOf(board, end_mm) + 17}>
      {says.map((number, i) => (
        <tspan key={number} class="end-number" data-drawn="end" data-narrow={narrow} x={x} dy={i ? LINE_PX : 0}>
          {narrow ? number.replace(' ', '') : number}
        </tspan>
      ))}
      {!narrow &&
        notes.map((note) => (
          <tspan key={note} class="end-note" x={x} dy={LINE_PX}>
            {note}
          </tspan>
        ))}
    </text>
  )
}
