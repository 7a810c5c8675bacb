import type { Chair } from './chair'

/** The image that the step due in a canal took: the last one since the step or the word before it. */
export function imageOfStep({ events, course }: Pick<Chair, 'events' | 'course'>, canal: string): string | undefined {
  const last = events.findLast(
    ({ id, kind, canal: of }) =>
      of === canal && ['step', 'sign_off', 'image'].includes(kind) && !course.undone.has(id) && !course.outOfCourse[id],
  )
  return last?.kind === 'image' ? String(last.body.image_id) : undefined
}
