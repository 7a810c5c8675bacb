import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { useElementSize } from '@/parts/element-size'
import { words } from '@/words/en'
import './depth-board.css'
import { type Board, centreOf, lines, NARROW_PX, NOTE_PX, yOf } from './geometry'

/** A canal's place on the board: what stands over it, and it in a sentence. */
interface Column {
  readonly canal: string
  /** Under the name, as far as there is room. */
  readonly under: string
  readonly says: string
  /** What stands in its way or is to be borne in mind. */
  readonly grave?: 'stop' | 'caution' | undefined
}

export interface Room {
  readonly width: number
  readonly height: number
}

interface Props {
  name: string
  says: string
  caption: (board: Board) => string
  columns: readonly Column[]
  picked: string | undefined
  /** Makes the columns radios of one group. */
  onPick: ((canal: string) => void) | undefined
  layOut: (room: Room) => Board
  drawn: (board: Board, hatch: string) => ComponentChildren
  /** What lies over the columns and can be touched. */
  over?: (board: Board) => ComponentChildren
}

/** All canals of a tooth side by side on one axis of millimetres from the reference point down; one may be selected. */
export function BoardFrame({ name, says, caption, columns, picked, onPick, layOut, drawn, over }: Props) {
  const { room, measured, ref } = useElementSize()
  const id = useId()
  const hatch = `hatch-${id}`
  const board = layOut(room)
  return (
    <figure class="depth-board">
      <div class="depth-board-room" ref={ref}>
        {measured && (
          <>
            <svg
              width={room.width}
              height={room.height}
              viewBox={`0 0 ${room.width} ${room.height}`}
              role="img"
              aria-labelledby={`${id}-name`}
              aria-describedby={`${id}-says`}
            >
              <title id={`${id}-name`}>{name}</title>
              <defs>
                <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                  <line class="hatch" x1="0" y1="0" x2="0" y2="5" />
                </pattern>
              </defs>
              {columns.length > 1 && <Lane board={board} index={columns.findIndex((c) => c.canal === picked)} />}
              <Axis board={board} columns={columns.length} />
              {drawn(board, `url(#${hatch})`)}
              {columns.map((column, i) => (
                <Heading key={column.canal} board={board} column={column} x={centreOf(board, i)} />
              ))}
            </svg>
            {onPick && <Radios board={board} columns={columns} picked={picked} onPick={onPick} />}
            {over?.(board)}
          </>
        )}
      </div>
      <figcaption class="soft">{caption(board)}</figcaption>
      <p class="unseen" id={`${id}-says`}>
        {says}
      </p>
    </figure>
  )
}

/** Where a column lies over the drawing. */
export const placeOf = (board: Board, index: number) => ({
  left: `${board.gutter + board.column * index}px`,
  width: `${board.column}px`,
})

interface RadiosProps {
  board: Board
  columns: readonly Column[]
  picked: string | undefined
  onPick: (canal: string) => void
}

function Radios({ board, columns, picked, onPick }: RadiosProps) {
  const name = useId()
  return (
    <div class="board-columns not-on-paper" role="radiogroup" aria-label={words.board.canals}>
      {columns.map(({ canal, says }, i) => (
        <input
          key={canal}
          type="radio"
          name={name}
          checked={canal === picked}
          aria-label={says}
          style={placeOf(board, i)}
          onChange={() => onPick(canal)}
          onKeyDown={({ key }) => key === 'Enter' && onPick(canal)}
        />
      ))}
    </div>
  )
}

const NAME_PX = 16
const LETTER_SHARE = 0.66 // width of a bold capital, as a share of its size

interface HeadingProps {
  board: Board
  column: Column
  x: number
}

/** The canal's name, its sign and what stands under it; in a narrow column the sign stands there alone. */
function Heading({ board, column: { canal, under, grave }, x }: HeadingProps) {
  const narrow = board.column < NARROW_PX
  const left = narrow ? x - 6 : x + (canal.length * NAME_PX * LETTER_SHARE) / 2 + 5
  const top = narrow ? 22 : 4
  return (
    <g>
      {grave && (
        <path
          class="sign-drawn"
          data-drawn="sign"
          data-severity={grave}
          d={grave === 'stop' ? `M${left} ${top}h11v11h-11z` : `M${left + 6} ${top}l6.5 12h-13z`}
        />
      )}
      <text class="canal-name" data-narrow={narrow} x={x} y={15}>
        {canal}
      </text>
      {!narrow && (
        <text class="canal-reference" y={29}>
          {lines(under, NOTE_PX, board.column - 2).map((line, i) => (
            <tspan key={line} x={x} dy={i ? 13 : 0}>
              {line}
            </tspan>
          ))}
        </text>
      )}
    </g>
  )
}

function Lane({ board, index }: { board: Board; index: number }) {
  if (index < 0) return null
  const x = board.gutter + board.column * index + 1
  return <rect class="lane" x={x} y={0} width={board.column - 2} height={board.height} rx={6} />
}

function Axis({ board, columns }: { board: Board; columns: number }) {
  const right = board.gutter + board.column * columns
  const marks = Array.from({ length: Math.floor(board.deepest_mm) + 1 }, (_, mm) => mm)
  return (
    <g class="axis">
      {marks.map((mm) => {
        const y = yOf(board, mm)
        const fifth = mm % 5 === 0
        return (
          <g key={mm}>
            {fifth && <line class={mm === 0 ? 'reference' : 'grid'} x1={board.gutter} x2={right} y1={y} y2={y} />}
            <line class="mark" x1={board.gutter - (fifth ? 8 : 4)} x2={board.gutter} y1={y} y2={y} />
            {fifth && (
              <text x={board.gutter - 11} y={y + 4}>
                {mm}
              </text>
            )}
          </g>
        )
      })}
    </g>
  )
}
