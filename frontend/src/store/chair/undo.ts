import { personId } from '@/store/session/session'
import type { CourseEvent } from '@/walk/course-event'
import type { Chair } from './chair'

const TEN_MINUTES_MS = 10 * 60_000 // a rule of the screen alone: a slip is noticed at once or not at all

/** One's own last entry, on the canal or on an instrument, that can be taken back now. A note is no tap: it is passed over. */
export function lastToUndo(chair: Chair, canal: string, now: number = Date.now()): CourseEvent | undefined {
  const me = personId()
  const { undoable } = chair.course
  const here = (e: CourseEvent) => e.canal === canal || e.kind === 'inspected'
  const last = chair.events.findLast((e) => e.actor === me && here(e) && e.kind !== 'note' && undoable.has(e.id))
  if (!last) return undefined
  const at = timeOf(chair, last.id)
  return at !== undefined && now - at < TEN_MINUTES_MS ? last : undefined
}

/** When it was recorded. By this phone's clock on both sides: it may be wrong, but not against itself. */
export function timeOf({ treatment, waiting }: Chair, id: string): number | undefined {
  const sent = treatment.events.find((event) => event.id === id)?.device_time
  const time = sent ?? waiting.find((entry) => entry.event.id === id)?.event.device_time
  return time === undefined ? undefined : Date.parse(time)
}
