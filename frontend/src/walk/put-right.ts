import type { CourseEvent, EventOf } from './course-event'

/** Whether it says that an image was struck or put to another canal. */
export const concernsImage = (event: CourseEvent): event is EventOf<'struck'> =>
  event.kind === 'struck' && event.payload.what === 'image'

/** The canal that it puts an image to; undefined of any other event. Empty for the whole tooth. */
export const movedTo = (event: CourseEvent): string | undefined =>
  concernsImage(event) ? (event.payload.moved_to ?? undefined) : undefined

/**
 * Whether an image counts in a canal where it was told of, by the rule that the server counts by. What is put right
 * holds whenever the image was told of: a phone may tell of it after it was struck.
 */
export function putRight(
  events: readonly CourseEvent[],
): (imageId: string | null | undefined, canal: string) => boolean {
  const struck = new Set<string>()
  const away = new Set<string>()
  const place = (imageId: string, canal: string) => `${imageId} ${canal}`
  for (const { canal, payload } of events.filter(concernsImage)) {
    if (payload.moved_to == null) struck.add(payload.struck)
    else {
      away.add(place(payload.struck, canal))
      away.delete(place(payload.struck, payload.moved_to))
    }
  }
  return (imageId, canal) => Boolean(imageId) && !struck.has(imageId ?? '') && !away.has(place(imageId ?? '', canal))
}
