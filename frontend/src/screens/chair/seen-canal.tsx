import type { CanalPlan } from '@/api/shapes'
import { adviceIn, instrumentOf } from '@/panels/emergency/at-hand'
import { FirstSteps } from '@/panels/emergency/first-steps'
import { InSpite } from '@/panels/hold-point/answered'
import { ImagesOf } from '@/panels/images/images-of'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { imagesTaken } from '@/store/chair/image-of-step'
import { mayTell } from '@/store/chair/part'
import type { CanalProgress } from '@/walk/course'
import { words } from '@/words/en'
import { Asked } from './asked'
import { restsOn, What, Where } from './now-card'
import { pausedFor, Resume } from './withheld'
import './now-card.css'

interface Props {
  chair: Chair
  canal: CanalPlan
  /** Who works it. */
  who: string
}

/** Where one canal stands, told of somebody else, and what a supervisor answers to it. */
export function SeenCanal({ chair, canal, who }: Props) {
  const course = chair.course.canals[canal.canal]
  if (!course) return null
  const { node } = course.walk
  const held = heldSays(chair, canal.canal, course, who)
  return (
    <section class="now-card" aria-label={canal.canal}>
      {node.kind === 'end' ? (
        <h2 class="now-where">
          <b>{canal.canal}</b>
        </h2>
      ) : (
        <Where canal={canal} course={course} node={node} />
      )}
      <InSpite chair={chair} canal={canal.canal} />
      {held && <Notice sign={course.state === 'finished' ? 'approved' : 'caution'}>{held}</Notice>}
      {node.kind !== 'end' && (
        <What chair={chair} node={node} instrument={instrumentOf(chair, node.instrument)} stop={course.walk.stop()} />
      )}
      <p class="small soft">{restsOn(canal)}</p>
      {course.state === 'hold_point' && node.kind !== 'end' && <WaitsForSignOff {...{ chair, canal, node }} />}
      {course.held === 'paused' && (
        <FirstSteps advice={adviceIn(chair)} about="pause" what={pausedFor(chair, canal.canal)} />
      )}
      {(course.held === 'paused' || course.held === 'to_check') && <Resume chair={chair} canal={canal.canal} />}
      <Asked chair={chair} canal={canal.canal} course={course} />
      <ImagesOf caseId={chair.caseId} ids={imagesTaken(chair, canal.canal)} />
    </section>
  )
}

function WaitsForSignOff({ chair, canal, node }: Omit<Props, 'who'> & { node: { hold_point: string | null } }) {
  return (
    <>
      <Notice sign="waiting">{words.look.canal.waits(node.hold_point ?? '')}</Notice>
      {mayTell(chair.course, 'sign_off') && (
        <a class="button main" href={`/cases/${chair.caseId}/sign-off/${canal.canal}`}>
          {words.look.answer}
        </a>
      )}
    </>
  )
}

/** Why the canal is not worked, if it is not. */
function heldSays(chair: Chair, canal: string, course: CanalProgress, who: string): string | undefined {
  const { state } = course
  switch (state) {
    case 'waits':
      return course.waitsFor.map(({ says }) => says).join(' ')
    case 'paused':
      return words.look.canal.paused(words.card.pausedFor[pausedFor(chair, canal)] ?? '')
    case 'past_stop':
    case 'to_check':
      return words.look.canal[state](who)
    case 'not_released':
    case 'to_plan':
    case 'finished':
      return words.look.canal[state]
    default:
      return undefined
  }
}
