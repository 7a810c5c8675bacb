import type { CanalPlan } from '@/api/shapes'
import { nameOf } from '@/panels/emergency/at-hand'
import type { Chair } from '@/store/chair/chair'
import { nextAtTray } from '@/walk/tray'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  canals: readonly CanalPlan[]
  current: string
  onTurn: (canal: string) => void
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
