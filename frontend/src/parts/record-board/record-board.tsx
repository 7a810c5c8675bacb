import type { CanalRecord } from '@/api/shapes'
import { EndNumber } from '@/parts/depth-board/canal-end'
import { BoardFrame } from '@/parts/depth-board/frame'
import {
  type Board,
  centreOf,
  layOut,
  leanAt,
  lines,
  NOTE_PX,
  type Place,
  profile,
  yOf,
} from '@/parts/depth-board/geometry'
import { Meeting, sideOf } from '@/parts/depth-board/meeting'
import type { BoardCanal } from '@/parts/depth-board/shape'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './record-board.css'

interface Props {
  canals: readonly CanalRecord[]
  /** The gravest of what was not as planned in a canal. */
  graveOf: (canal: string) => 'stop' | 'caution' | undefined
  picked: string | undefined
  onPick: (canal: string) => void
}

type Named = Pick<CanalRecord, 'canal' | 'reference_point' | 'joins'>

/** What the geometry of the plan's board needs of a canal of the record. */
export function asDrawn(canal: Named, shape: CanalRecord['done'], end_mm: number | null): BoardCanal {
  return {
    canal: canal.canal,
    reference_point: canal.reference_point,
    end_mm,
    junction_mm: canal.joins === null ? null : end_mm,
    joins: canal.joins,
    provisional: false,
    final_size: null,
    final_taper: 0,
    length: { state: '', rests_on: [], readings: [], working_length_mm: null },
    outline: shape?.outline ?? [],
    expectation: null,
    withheld: [],
  }
}

/** All canals of a tooth as they were planned, an outline, and as they were done, filled. */
export function RecordBoard({ canals, graveOf, picked, onPick }: Props) {
  const done = canals.map((canal) => asDrawn(canal, canal.done, canal.end_mm))
  const planned = canals.map((canal) => asDrawn(canal, canal.planned, canal.planned?.end_mm ?? null))
  const columns = canals.map((canal) => ({
    canal: canal.canal,
    under: canal.reference_point,
    grave: graveOf(canal.canal),
    says: words.record.column(canal.canal, canal.end_mm === null ? undefined : mm(canal.end_mm), canal.differs),
  }))
  return (
    <BoardFrame
      name={words.board.name}
      says={columns.map(({ says }) => `${says}.`).join(' ')}
      caption={(board) => words.record.caption(board.widened)}
      columns={columns}
      picked={picked}
      onPick={onPick}
      layOut={({ width, height }) => layOut(width, height, done, planned)}
      drawn={(board) =>
        canals.map((canal, i) => (
          <g key={canal.canal} class="canal" data-picked={canal.canal === picked}>
            <Meeting board={board} canals={done} index={i} />
            <Canal
              canal={canal}
              done={placed(board, done, i)}
              planned={placed(board, planned, i)}
              notes={canal.joins === null ? canal.differs : [...canal.differs, words.board.joins(canal.joins)]}
            />
          </g>
        ))
      }
    />
  )
}

interface Placed extends Place {
  readonly canal: BoardCanal
}

function placed(board: Board, canals: readonly BoardCanal[], index: number): Placed | undefined {
  const canal = canals[index]
  return canal && { board, index, canal, side: sideOf(canals, index) }
}

interface CanalProps {
  canal: CanalRecord
  done: Placed | undefined
  planned: Placed | undefined
  notes: readonly string[]
}

function Canal({ canal, done, planned, notes }: CanalProps) {
  if (!done || !planned) return null
  const { board, index, side } = done
  const filled = profile(done, done.canal.outline)
  const outline = profile(planned, planned.canal.outline)
  const centre = centreOf(board, index)
  const half = Math.min(board.column * 0.38, 40)
  const { end_mm } = canal
  const was = planned.canal.end_mm
  return (
    <>
      {filled && <polygon class="shape" data-drawn="done" points={filled} />}
      {outline && <polygon class="planned" data-drawn="planned" points={outline} />}
      {was !== null && was !== end_mm && (
        <line class="planned" x1={centre - half} x2={centre + half} y1={yOf(board, was)} y2={yOf(board, was)} />
      )}
      {end_mm !== null && (
        <line
          class="end"
          data-kind={canal.joins === null ? 'firm' : 'junction'}
          x1={centre + leanAt(board, end_mm, end_mm, side) - half}
          x2={centre + leanAt(board, end_mm, end_mm, side) + half}
          y1={yOf(board, end_mm)}
          y2={yOf(board, end_mm)}
        />
      )}
      <EndNumber
        board={board}
        x={centre}
        end_mm={end_mm ?? 0}
        says={[end_mm === null ? words.board.noLength : mm(end_mm)]}
        notes={notes.flatMap((note) => lines(note, NOTE_PX, board.column - 2))}
      />
    </>
  )
}
