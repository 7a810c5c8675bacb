import type { OutOfCourse, RunSheet } from '@/api/shapes'
import { atFirstSteps, type CanalProgress } from './canal-progress'
import type { EventOf, PayloadOf } from './course-event'

/** Run sheets of one plan by canal. */
export type Sheets = Readonly<Record<string, RunSheet>>

type Canals = Readonly<Record<string, CanalProgress>>

/** What an event about plans changes of the case. */
interface Moves {
  readonly plans: Readonly<Record<string, Sheets>>
  plan: string
  canals: Record<string, CanalProgress>
  revokedBy: string | null
}

/** Puts a plan into force. Its run sheets begin where the work stands; a canal held or not released stays so. */
export function putIntoForce({ plan, payload }: EventOf<'replan'>, course: Moves): OutOfCourse | null {
  const sheets = course.plans[plan]
  // Another plan has come into force since, or the sheets of this one are not here.
  if (!['', payload.replaces].includes(course.plan) || !sheets) return 'other_plan'
  const before = course.canals
  course.plan = plan
  course.canals = atFirstSteps(sheets)
  course.revokedBy = null
  for (const [name, canal] of Object.entries(course.canals)) {
    const old = before[name]
    if (!old) continue
    const { held, askedBy, released, asking, coming } = old
    Object.assign(canal, { held, askedBy, released, asking, coming })
  }
  return null
}

/** The approval of the plan in force was withdrawn. */
export function revoke({ id, plan }: EventOf<'revoked'>, course: Moves): OutOfCourse | null {
  if (plan !== course.plan) return 'other_plan'
  course.revokedBy = id
  return null
}

/** The last decision says which canals may not be worked; all others may. */
export function release({ not_released }: PayloadOf<'release'>, canals: Canals): null {
  const leftOut = not_released.map(({ canal }) => canal)
  for (const [name, canal] of Object.entries(canals)) canal.released = !leftOut.includes(name)
  return null
}

/**
 * A struck reading sends its canal back to planning: the stops of any plan may rest on it. No stop rests on an image alone,
 * but a sign-off may.
 */
export function strike(event: EventOf<'struck'>, canals: Canals): OutOfCourse | null {
  if (event.payload.what === 'image') return imagePutRight(event, canals)
  const course = canals[event.canal]
  if (!course) return 'no_canal'
  course.toPlan = true
  return null
}

/** A struck image counts in no canal; one that was moved counts in its new canal and no longer in `was`. */
function imagePutRight({ canal: was, payload }: EventOf<'struck'>, canals: Canals): null {
  const { struck, moved_to = null } = payload
  for (const [name, canal] of Object.entries(canals)) {
    if (moved_to === null || (name === was && name !== moved_to)) canal.reopen(struck)
  }
  if (moved_to !== null) canals[moved_to]?.addImage(struck)
  return null
}
