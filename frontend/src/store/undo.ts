import type { Happened } from '@/walk/happened'
import { mayUndo } from '@/walk/undone'
import type { Chair } from './chair'
import { personId } from './session'

const TEN_MINUTES_MS = 10 * 60_000 // a rule of the screen alone: a slip is noticed at once or not at all

/** One's own last entry on the canal, while it can still be taken back. */
export function lastToUndo(chair: Chair, canal: string, now: number = Date.now()): Happened | undefined {
  const me = personId()
  const undone = chair.course.undone
  const own = chair.events.filter((e) => e.actor === me && e.canal === canal && e.kind !== 'undo' && !undone.has(e.id))
  const last = own.at(-1)
  if (!last || !mayUndo(last)) return undefined
  const at = timeOf(chair, last.id)
  return at !== undefined && now - at < TEN_MINUTES_MS ? last : undefined
}

/** When it was recorded. By this phone's clock on both sides: it may be wrong, but not against itself. */
export function timeOf({ treatment, waiting }: Chair, id: string): number | undefined {
  const sent = treatment.events.find((event) => event.id === id)?.device_time
  const time = sent ?? waiting.find((entry) => entry.event.id === id)?.event.device_time
  return time === undefined ? undefined : Date.parse(time)
}
