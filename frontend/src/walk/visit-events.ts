import type { OutOfCourse } from '@/api/shapes'
import type { CanalProgress } from './canal-progress'
import type { EventOf } from './course-event'
import type { TakenOver } from './taken-over'
import type { Visit } from './visit'

/** Kinds of events about the room and the whole tooth: they count whatever plan was on the screen. */
export type OfVisit = 'close' | 'reopen' | 'on_site' | 'dam'

/** What such an event changes of the case. */
interface Moves {
  readonly visit: Visit
  readonly takenOver: TakenOver
  readonly canals: Readonly<Record<string, CanalProgress>>
}

/** Moves the visit by one event, whatever plan was on the screen; why where the event moves nothing. */
export function takeVisit(event: EventOf<OfVisit>, course: Moves): OutOfCourse | null {
  const { visit, takenOver } = course
  switch (event.kind) {
    case 'close':
      if (!visit.close()) return 'closed'
      takenOver.end(takenOver.by)
      return null
    case 'reopen':
      return reopen(event, course)
    case 'on_site':
      if (event.notChecked === 'room') return 'not_checked'
      return visit.name(event.payload.supervisor_id) ? null : 'closed'
    case 'dam':
      return visit.isolate(event.payload.state) ? null : 'closed'
  }
}

/**
 * Canals that were not found as they were left stay withheld, finished ones excepted. That a reference point has gone
 * holds also where another phone has opened the visit before.
 */
function reopen({ payload, notChecked }: EventOf<'reopen'>, { canals, visit }: Moves): OutOfCourse | null {
  const { as_left, found: checks = [], supervisor_id = '' } = payload
  const unfinished = Object.entries(canals).filter(([, canal]) => canal.state !== 'finished')
  const gone = checks.filter((canal) => canal.reference_point).map(({ canal }) => canal)
  const moved = unfinished.filter(([name]) => gone.includes(name))
  for (const [, canal] of moved) canal.toPlan = true
  // The visit opens all the same where nobody knows who was in the room: then nobody was named.
  const onSite = notChecked === 'room' ? '' : supervisor_id
  if (!visit.reopen(onSite, payload.protected ?? false)) return moved.length > 0 ? null : 'nothing_asked'
  for (const [name, canal] of unfinished) {
    if (!as_left.includes(name) && !gone.includes(name)) canal.held ??= 'to_check'
  }
  return null
}
