import type { CourseEvent } from '@/walk/course-event'
import { concernsImage, movedTo, putRight } from '@/walk/put-right'
import type { Chair } from './chair'

/** The image that the step due in a canal took: the last one that counts since the step or the sign-off before it. */
export function imageOfStep({ events, course }: Pick<Chair, 'events' | 'course'>, canal: string): string | undefined {
  const counts = putRight(events)
  const last = events.findLast(
    (event) =>
      event.canal === canal &&
      (event.kind === 'image'
        ? counts(event.payload.image_id, canal)
        : event.kind === 'step' || event.kind === 'sign_off') &&
      !course.undone.has(event.id) &&
      !course.outOfCourse[event.id],
  )
  return last?.kind === 'image' ? last.payload.image_id : undefined
}

/** Ids of the images that were taken of a canal and not taken back, or put to it, in their order. */
export function imagesTaken({ events, course }: Pick<Chair, 'events' | 'course'>, canal: string): string[] {
  return imagesIn(events, course.undone, canal)
}

/** Ids of the images taken of a canal, or put to it, since its last sign-off that counted. */
export function imagesSince({ events, course }: Pick<Chair, 'events' | 'course'>, canal: string): string[] {
  const last = events.findLastIndex(
    ({ id, kind, canal: of }) => kind === 'sign_off' && of === canal && course.signOffCounts(canal, id),
  )
  return imagesIn(events.slice(last + 1), course.undone, canal)
}

function imagesIn(events: readonly CourseEvent[], undone: ReadonlySet<string>, canal: string): string[] {
  const counting = events.filter(({ id }) => !undone.has(id))
  return [...new Set(counting.flatMap((event) => imageFor(event, canal) ?? []))]
}

/** The image that the event brings to the canal, struck since or not. */
function imageFor(event: CourseEvent, canal: string): string | undefined {
  if (event.kind === 'image' && event.canal === canal) return event.payload.image_id
  return concernsImage(event) && movedTo(event) === canal ? event.payload.struck : undefined
}

/** Whether the canal's last sign-off rested on an image that no longer counts there. */
export function restedOnGone({ events, course }: Pick<Chair, 'events' | 'course'>, canal: string): boolean {
  const words = events.flatMap(({ id, kind, canal: of }, at) =>
    kind === 'sign_off' && of === canal && !course.outOfCourse[id] ? [at] : [],
  )
  const [last, before = -1] = words.reverse()
  if (last === undefined) return false
  const counts = putRight(events)
  return imagesIn(events.slice(before + 1, last), course.undone, canal).some((id) => !counts(id, canal))
}

/** Whether the canal's last sign-off, which was in course when it was given, has to be given again. */
export function askedAgain({ events, course }: Pick<Chair, 'events' | 'course'>, canal: string): boolean {
  const last = events.findLast(
    ({ id, kind, canal: of }) => kind === 'sign_off' && of === canal && !course.outOfCourse[id],
  )
  return last !== undefined && !course.signOffCounts(canal, last.id)
}
