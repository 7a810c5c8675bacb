import type { CourseEvent } from '@/walk/course-event'
import { concernsImage, putRight } from '@/walk/put-right'
import type { Chair } from './chair'

/** Images that supervisors asked for and that have not come: the last ask of each canal, in their order. */
export function wantedImages({ events, course }: Pick<Chair, 'events' | 'course'>): readonly CourseEvent[] {
  const counting = events.filter((event) => !course.undone.has(event.id))
  const open = new Map<string, CourseEvent>()
  const counts = putRight(counting)
  for (const event of counting) {
    const { kind, canal, body } = event
    if (kind === 'wanted') open.set(canal, event)
    else if (concernsImage(event) && counts(body.struck, String(body.moved_to))) open.delete(String(body.moved_to))
    else if (kind === 'image' ? counts(body.image_id, canal) : answersIt(event)) open.delete(canal)
  }
  return [...open.values()]
}

/** Why there is none, or a word that did not wait for it. */
function answersIt({ kind, body }: CourseEvent): boolean {
  return kind === 'sign_off' || (kind === 'step' && typeof body.no_image === 'string')
}
