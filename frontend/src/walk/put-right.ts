import type { CourseEvent, EventOf } from './course-event'

/** Whether the event says that an image was struck or put to another canal. */
export const concernsImage = (event: CourseEvent): event is EventOf<'struck'> =>
  event.kind === 'struck' && event.payload.what === 'image'

/** The canal that the event puts an image to, empty for the whole tooth; undefined for any other event. */
export const movedTo = (event: CourseEvent): string | undefined =>
  concernsImage(event) ? (event.payload.moved_to ?? undefined) : undefined

/**
 * Returns whether an image that was recorded in a canal counts there, by the server's rule. A correction holds even where
 * the image is recorded after it: a phone may tell of an image late.
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
      // Put back to a canal that it had been taken from, it counts there again.
      away.delete(place(payload.struck, payload.moved_to))
    }
  }
  return (imageId, canal) => Boolean(imageId) && !struck.has(imageId ?? '') && !away.has(place(imageId ?? '', canal))
}
