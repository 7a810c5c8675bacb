import type { CourseEvent } from './course-event'

/** Whether it says that an image was struck or put to another canal. */
export const concernsImage = ({ kind, body }: Pick<CourseEvent, 'kind' | 'body'>): boolean =>
  kind === 'struck' && body.what === 'image'

/**
 * Whether an image counts in a canal where it was told of, by the rule that the server counts by. What is put right
 * holds whenever the image was told of: a phone may tell of it after it was struck.
 */
export function putRight(events: readonly CourseEvent[]): (imageId: unknown, canal: string) => boolean {
  const struck = new Set<unknown>()
  const away = new Set<string>()
  const place = (imageId: unknown, canal: unknown) => `${imageId} ${canal}`
  for (const { canal, body } of events.filter(concernsImage)) {
    if (typeof body.moved_to !== 'string') struck.add(body.struck)
    else {
      away.add(place(body.struck, canal))
      away.delete(place(body.struck, body.moved_to))
    }
  }
  return (imageId, canal) => Boolean(imageId) && !struck.has(imageId) && !away.has(place(imageId, canal))
}
