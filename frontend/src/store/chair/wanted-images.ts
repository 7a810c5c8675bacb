import type { CourseEvent, EventOf } from '@/walk/course-event'
import { concernsImage, movedTo, putRight } from '@/walk/put-right'
import type { Chair } from './chair'

/** Images that supervisors asked for and that have not come: the last ask of each canal, in their order. */
export function wantedImages({ events, course }: Pick<Chair, 'events' | 'course'>): readonly EventOf<'wanted'>[] {
  const counting = events.filter((event) => !course.undone.has(event.id))
  const open = new Map<string, EventOf<'wanted'>>()
  const counts = putRight(counting)
  for (const event of counting) {
    const { canal } = event
    const to = movedTo(event)
    if (event.kind === 'wanted') open.set(canal, event)
    else if (concernsImage(event) && to !== undefined && counts(event.payload.struck, to)) open.delete(to)
    else if (event.kind === 'image' ? counts(event.payload.image_id, canal) : answersIt(event)) open.delete(canal)
  }
  return [...open.values()]
}

/** Why there is none, or a sign-off that did not wait for it. */
function answersIt(event: CourseEvent): boolean {
  return event.kind === 'sign_off' || (event.kind === 'step' && event.payload.no_image != null)
}
