import type { CanalPlan, CanalState } from '@/api/shapes'
import { nameOf } from '@/panels/emergency/at-hand'
import { Sign, type SignName } from '@/parts/signs'
import type { Chair } from '@/store/chair/chair'
import { contact_s } from '@/store/chair/contact-time'
import { nextAtTray } from '@/walk/tray'
import { words } from '@/words/en'
import { useNow } from './use-now'

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

/** Every canal with where it stands; any of them one tap away. */
export function CanalStrip({ chair, canals, current, onTurn }: Props) {
  return (
    <nav class="canal-strip" aria-label={words.chair.canals}>
      {canals.map(({ canal }) => {
        const state = chair.course.canals[canal]?.state ?? 'open'
        return (
          <button key={canal} type="button" aria-pressed={canal === current} onClick={() => onTurn(canal)}>
            <b>{canal}</b>
            <span class="small">
              <Sign name={SIGNS[state]} /> {words.chair.state[state]}
            </span>
            {canal !== current && <TimeIn chair={chair} canal={canal} />}
          </button>
        )
      })}
    </nav>
  )
}

const SECOND_MS = 1000

/** How long an irrigant has been in a canal that is not the one in hand. */
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

/** The canal that the order at the tray takes next; nothing while the step belongs to what was just done here. */
export function NextAtTray({ chair, canals, current, onTurn }: Props) {
  const course = chair.course.canals[current]
  const node = course?.walk.node
  if (course?.state === 'open' && node?.kind === 'do' && BELONGS.includes(node.action)) return null
  const next = nextAtTray(chair.plan.tray, canals, chair.course.canals)
  if (!next || next.canal === current) return null
  return (
    <button type="button" class="button answer next-at-tray" onClick={() => onTurn(next.canal)}>
      {words.card.next(nameOf(chair, next.instrument), next.canal)}
    </button>
  )
}
