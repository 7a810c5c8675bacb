import { useId } from 'preact/hooks'
import { useElementSize } from '@/parts/element-size'
import { words } from '@/words/en'
import { CanalColumn } from './canal-column'
import './depth-board.css'
import { type Board, centreOf, layOut, lines, NOTE_PX, yOf } from './geometry'
import { marksOf, SIGN_Y, type Sign, zonesOf } from './marks'
import { Meeting, sideOf } from './meeting'
import type { DrawnProgress } from './moments'
import type { BoardCanal, CoronalStop, Silhouette } from './shape'
import { describe } from './shape'
import { Touches } from './touches'

interface Props {
  canals: readonly BoardCanal[]
  coronal?: readonly CoronalStop[]
  /** The same canals in the version this one is compared with: its outline is laid over. */
  before?: readonly BoardCanal[] | undefined
  picked?: string | undefined
  onPick?: ((canal: string) => void) | undefined
  /** How far the work has come; nothing shows the plan as a whole. */
  progress?: DrawnProgress | undefined
  silhouettes?: ReadonlyMap<string, Silhouette>
  /** What is drawn beside a canal's name as long as it stands. */
  cautions?: readonly Sign[]
  nameOf?: (instrument: string) => string
  /** How high a place must be to be hit: more with gloves. */
  touch_px?: number
}

const NO_SILHOUETTES: ReadonlyMap<string, Silhouette> = new Map()
const TOUCH_PX = 44
const NAME_PX = 11 // about the width of a letter of a canal's name

/** All canals of a tooth side by side on one axis of millimetres from the reference point down. */
export function DepthBoard(props: Props) {
  const { canals, coronal = [], before, picked, onPick, progress, silhouettes = NO_SILHOUETTES } = props
  const { cautions = [], nameOf = (key) => key, touch_px = TOUCH_PX } = props
  const { room, measured, ref } = useElementSize()
  const id = useId()
  const hatch = `hatch-${id}`
  const board = layOut(room.width, room.height, canals, before, silhouettes.values())
  const signsOf = (canal: BoardCanal) => standingIn(canal.canal, cautions)
  const coronalOf = (canal: BoardCanal) => coronal.find((c) => c.canal === canal.canal)
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
              <title id={`${id}-name`}>{words.board.name}</title>
              <defs>
                <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                  <line class="hatch" x1="0" y1="0" x2="0" y2="5" />
                </pattern>
              </defs>
              <Lanes board={board} canals={canals} picked={canals.length > 1 ? picked : undefined} onPick={onPick} />
              <Axis board={board} columns={canals.length} />
              {canals.map((canal, i) => (
                <Meeting key={canal.canal} board={board} canals={canals} index={i} />
              ))}
              {canals.map((canal, i) => (
                <CanalColumn
                  key={canal.canal}
                  place={{ board, index: i, canal, side: sideOf(canals, i) }}
                  canal={canal}
                  before={before?.find((b) => b.canal === canal.canal)}
                  coronal={coronalOf(canal)}
                  hatch={hatch}
                  picked={canal.canal === picked}
                  progress={progress}
                  silhouettes={silhouettes}
                />
              ))}
              {canals.map((canal, i) => (
                <Heading key={canal.canal} board={board} canal={canal} x={centreOf(board, i)} signs={signsOf(canal)} />
              ))}
            </svg>
            <Touches
              board={board}
              zones={canals.map((canal) => {
                const marks = marksOf({
                  board,
                  canal,
                  coronal: coronalOf(canal),
                  signs: signsOf(canal),
                  progress,
                  nameOf,
                })
                return [canal.canal, zonesOf(marks, touch_px)] as const
              })}
            />
          </>
        )}
      </div>
      <figcaption class="soft">{words.board.caption(board.widened, before !== undefined, oval(canals))}</figcaption>
      <p class="unseen" id={`${id}-says`}>
        {describe(canals, coronal, before)}
      </p>
    </figure>
  )
}

const oval = (canals: readonly BoardCanal[]) =>
  canals.some((c) => c.expectation?.initial_shape.points.some((p) => p.wide_mm > p.narrow_mm) ?? false)

/** What still stands in a canal's way, or is to be borne in mind. */
function standingIn(canal: string, cautions: readonly Sign[]): Sign[] {
  return cautions.filter(
    (caution) => caution.canal === canal && caution.severity !== 'note' && caution.overridden == null,
  )
}

interface HeadingProps {
  board: Board
  canal: BoardCanal
  x: number
  signs: readonly Sign[]
}

function Heading({ board, canal, x, signs }: HeadingProps) {
  const grave = signs.some(({ severity }) => severity === 'stop')
  const side = x + (canal.canal.length * NAME_PX) / 2 + 4
  return (
    <g>
      {signs.length > 0 && (
        <path
          class="sign-drawn"
          data-drawn="sign"
          data-severity={grave ? 'stop' : 'caution'}
          d={grave ? `M${side} ${SIGN_Y - 8}h11v11h-11z` : `M${side + 6} ${SIGN_Y - 8}l6.5 12h-13z`}
        />
      )}
      <text class="canal-name" x={x} y={15}>
        {canal.canal}
      </text>
      <text class="canal-reference" y={29}>
        {lines(canal.reference_point, NOTE_PX, board.column - 2).map((line, i) => (
          <tspan key={line} x={x} dy={i ? 13 : 0}>
            {line}
          </tspan>
        ))}
      </text>
    </g>
  )
}

type LaneProps = Pick<Props, 'canals' | 'picked' | 'onPick'> & { board: Board }

function Lanes({ board, canals, picked, onPick }: LaneProps) {
  return (
    <g>
      {canals.map(({ canal }, i) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the same choice is offered as buttons beside the board
        <rect
          key={canal}
          class="lane"
          data-picked={canal === picked}
          x={board.gutter + board.column * i + 1}
          y={0}
          width={board.column - 2}
          height={board.height}
          rx={6}
          onClick={() => onPick?.(canal)}
        />
      ))}
    </g>
  )
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
