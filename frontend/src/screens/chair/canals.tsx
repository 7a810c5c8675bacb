import { useState } from 'preact/hooks'
import type { CanalPlan, CanalState } from '@/api/shapes'
import { nameOf } from '@/panels/emergency/at-hand'
import { type Axis, boardOf } from '@/parts/canal-picture/geometry'
import { profile, yOf } from '@/parts/depth-board/geometry'
import { Sheet } from '@/parts/rationale/sheet'
import { Sign, type SignName } from '@/parts/signs'
import type { Chair } from '@/store/chair/chair'
import { contact_s } from '@/store/chair/contact-time'
import type { ExpectedRest } from '@/store/chair/expected'
import { wallOf } from '@/store/chair/wall'
import { nextAtTray } from '@/walk/tray'
import { words } from '@/words/en'
import { useNow } from './use-now'
import './canals.css'

const SIGNS: Record<CanalState, SignName> = {
  open: 'draft',
  hold_point: 'waiting',
  waits: 'waiting',
  not_released: 'returned',
  paused: 'stop',
  past_stop: 'caution',
  to_plan: 'returned',
  to_check: 'stop',
  finished: 'approved',
}

interface Props {
  chair: Chair
  canals: readonly CanalPlan[]
  current: string
  onTurn: (canal: string) => void
}

const stateOf = ({ course }: Chair, canal: string): CanalState => course.canals[canal]?.state ?? 'open'

interface ThinProps extends Props {
  ahead: ExpectedRest
  axis: Axis
  height: number
}

const GLOVED_PX = 56
const THIN_PX = 28
const ALL_PX = 88

/** The other canals, thin, in the order of the tooth: one place to touch, which opens all of them with where they stand. */
export function Canals({ chair, canals, current, onTurn, ahead, axis, height }: ThinProps) {
  const [open, setOpen] = useState(false)
  const others = canals.filter(({ canal }) => canal !== current)
  if (others.length === 0) return null
  const width = Math.min(THIN_PX, ALL_PX / others.length)
  return (
    <nav class="canals" aria-label={words.chair.canals}>
      <button
        type="button"
        aria-haspopup="dialog"
        style={{ width: `${Math.max(GLOVED_PX, others.length * width)}px` }}
        aria-label={words.chair.others(
          others.map(({ canal }) => `${canal} ${words.chair.state[stateOf(chair, canal)]}`),
        )}
        onClick={() => setOpen(true)}
      >
        {others.map((canal, i) => (
          <Thin key={canal.canal} left={i * width} of={{ chair, canal, ahead, axis, height, width }} />
        ))}
      </button>
      {open && (
        <Sheet title={words.chair.which} onClose={() => setOpen(false)}>
          <ul class="canal-rows">
            {canals.map(({ canal }) => (
              <li key={canal}>
                <button
                  type="button"
                  class="button"
                  aria-pressed={canal === current}
                  onClick={() => {
                    setOpen(false)
                    onTurn(canal)
                  }}
                >
                  <b>{canal}</b> <Sign name={SIGNS[stateOf(chair, canal)]} />{' '}
                  <span>{words.chair.state[stateOf(chair, canal)]}</span>
                  <TimeIn chair={chair} canal={canal} />
                </button>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
    </nav>
  )
}

interface ThinOf extends Pick<ThinProps, 'chair' | 'ahead' | 'axis' | 'height'> {
  canal: CanalPlan
  width: number
}

function Thin({ left, of: { chair, canal, ahead, axis, height, width } }: { left: number; of: ThinOf }) {
  const wall = wallOf(chair, canal, ahead)
  const board = boardOf(axis, width, height, wall, [])
  const end = canal.end_mm
  const state = stateOf(chair, canal.canal)
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      style={{ left: `${left}px` }}
      data-state={state}
      aria-hidden="true"
    >
      <text x={width / 2} y={12}>
        {canal.canal}
      </text>
      <polygon points={profile({ board, index: 0, canal, side: 0 }, wall)} />
      {end !== null && <line class="canal-stop" x1={2} x2={width - 2} y1={yOf(board, end)} y2={yOf(board, end)} />}
      {MARKS[state] && (
        <text class="mark" x={width / 2} y={Math.min(height - 4, yOf(board, end ?? axis.to_mm) + 18)}>
          {MARKS[state]}
        </text>
      )}
    </svg>
  )
}

/** Beside its name in the chooser each state has its sign and its word; here only what is done and what waits. */
const MARKS: Partial<Record<CanalState, string>> = { finished: '✓', hold_point: '…', waits: '…' }

const SECOND_MS = 1000

/** How long an irrigant has been in a canal. */
function TimeIn({ chair, canal }: { chair: Chair; canal: string }) {
  useNow(SECOND_MS)
  const seconds = contact_s([chair.caseId, canal, chair.course.canals[canal]?.walk.at ?? ''])
  if (seconds === undefined) return null
  return (
    <span class="small number">
      {seconds === null ? words.card.timeUnknownShort : words.card.time(seconds, undefined)}
    </span>
  )
}

const BELONGS = ['irrigate', 'recapitulate'] // to the instrument before: the canal is left after it

/** What the order at the tray takes next in another canal; nothing while the step belongs to what was just done here. */
export function nextElsewhere(chair: Chair, canals: readonly CanalPlan[], current: string) {
  const course = chair.course.canals[current]
  const node = course?.walk.node
  if (course?.state === 'open' && node?.kind === 'do' && BELONGS.includes(node.action)) return undefined
  const next = nextAtTray(chair.plan.tray, canals, chair.course.canals)
  if (next || course?.state === 'open') return next?.canal === current ? undefined : next
  // What is left needs no instrument.
  const open = canals.find(({ canal }) => chair.course.canals[canal]?.state === 'open')
  return open && { canal: open.canal, instrument: '' }
}

interface NextProps {
  chair: Chair
  of: NonNullable<ReturnType<typeof nextElsewhere>>
  onTurn: (canal: string) => void
  /** Whether it is what is due. */
  main?: boolean
}

/** To the canal that the order at the tray takes next. */
export function NextAtTray({ chair, of, onTurn, main = false }: NextProps) {
  return (
    <button type="button" class={`button ${main ? 'main' : 'answer'} next-at-tray`} onClick={() => onTurn(of.canal)}>
      {of.instrument ? words.card.next(nameOf(chair, of.instrument), of.canal) : words.card.goOnIn(of.canal)}
    </button>
  )
}
