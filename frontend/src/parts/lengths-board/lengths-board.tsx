import type { Length } from '@/api/shapes'
import { EndNumber } from '@/parts/depth-board/canal-end'
import { BoardFrame, type Room } from '@/parts/depth-board/frame'
import { type Board, centreOf, NARROW_PX, scalesOf, yOf } from '@/parts/depth-board/geometry'
import { disagreeing, lengthsOf } from '@/parts/depth-board/shape'
import { words } from '@/words/en'
import './lengths-board.css'

/** A canal as far as its length is known. */
export interface MeasuredCanal {
  readonly name: string
  readonly reference_point: string
  readonly length: Length | null
  readonly state: Length['state']
  /** How long its root usually is; none where that is not known. */
  readonly usual_mm: number | null
  /** A reading waits on this phone. */
  readonly waits: boolean
}

interface Props {
  canals: readonly MeasuredCanal[]
  picked: string | undefined
  onPick: (canal: string) => void
}

const LEAST_DEEP_MM = 20
const GRAVE: Partial<Record<Length['state'], 'stop' | 'caution'>> = { to_settle: 'caution', unsettled: 'stop' }

/** The length so far: the stop, or its estimate. */
const lengthOf = (length: Length | null): number | null => length?.stop_mm ?? length?.estimate_mm ?? null

/** As it is written: an estimate is called one, readings that disagree are both there. */
export function lengthSays(length: Length | null): string[] {
  const length_mm = lengthOf(length)
  return length_mm === null ? [] : lengthsOf(length_mm, length, length?.state === 'settled')
}

/** All canals of a tooth on one axis of millimetres, each as surely drawn as its length is known. */
export function LengthsBoard({ canals, picked, onPick }: Props) {
  const ends = canals.flatMap(({ length, usual_mm }) => [
    lengthOf(length) ?? usual_mm ?? 0,
    length?.estimated?.most_mm ?? 0,
    ...(length ? disagreeing(length) : []),
  ])
  const deepest_mm = Math.max(LEAST_DEEP_MM, ...ends)
  const columns = canals.map(({ name, reference_point, length, state, waits }) => ({
    canal: name,
    under: reference_point,
    grave: GRAVE[state],
    says: words.lengthsBoard.column(
      name,
      waits ? words.measure.notSent : words.lengthState(state),
      lengthSays(length).join(' '),
    ),
  }))
  return (
    <BoardFrame
      name={words.lengthsBoard.name}
      says={columns.map(({ says }) => `${says}.`).join(' ')}
      caption={() => words.lengthsBoard.caption}
      columns={columns}
      picked={picked}
      onPick={onPick}
      layOut={(room: Room) => ({ ...scalesOf(room, canals, deepest_mm), widened: 1 })}
      drawn={(board, hatch) =>
        canals.map((canal, i) => (
          <Measured key={canal.name} canal={canal} x={centreOf(board, i)} board={board} hatch={hatch} />
        ))
      }
    />
  )
}

interface MeasuredProps {
  canal: MeasuredCanal
  x: number
  board: Board
  hatch: string
}

/** A sign of a canal: only its length means something. */
function Measured({ canal: { length, state, usual_mm, waits }, x, board, hatch }: MeasuredProps) {
  const length_mm = lengthOf(length)
  const apart = length ? disagreeing(length) : []
  const ends = apart.length > 0 ? apart : length_mm === null ? [] : [length_mm]
  const end_mm = Math.max(...ends, length_mm === null ? (usual_mm ?? 0) : 0)
  const between = length?.estimated
  const sure = state === 'settled'
  const top = Math.min(13, board.column * 0.2)
  const half = Math.min(board.column * 0.38, 40)
  const y = (depth_mm: number) => yOf(board, depth_mm)
  const toMeasure = board.column < NARROW_PX ? '?' : words.lengthsBoard.measure
  return (
    <g class="measured" data-state={state}>
      {end_mm > 0 && (
        <path
          class="body"
          d={`M${x - top} ${y(0)}L${x - top / 3} ${y(end_mm)}h${(top * 2) / 3}L${x + top} ${y(0)}Z`}
          fill={sure || length_mm === null ? undefined : hatch}
        />
      )}
      {between && !sure && (
        <rect
          class="between"
          x={x - half}
          y={y(between.least_mm)}
          width={2 * half}
          height={y(between.most_mm) - y(between.least_mm)}
        />
      )}
      {ends.map((each_mm) => (
        <line key={each_mm} class="end" x1={x - half} x2={x + half} y1={y(each_mm)} y2={y(each_mm)} />
      ))}
      <EndNumber
        board={board}
        x={x}
        end_mm={Math.max(end_mm, between && !sure ? between.most_mm : 0)}
        says={waits ? [words.measure.here] : length_mm === null ? [toMeasure] : lengthSays(length)}
      />
    </g>
  )
}
