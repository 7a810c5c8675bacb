import type { EventPayload } from '@/api/shapes'

/** What an event tells, by the API's own types; nothing of it is written here once more. */
export type Kind = EventPayload['kind']
export type PayloadOf<K extends Kind> = Extract<EventPayload, { kind: K }>

/** What every event has. `canal` is empty where it concerns the whole tooth. */
interface Common {
  readonly id: string
  readonly actor: string
  readonly plan: string
  readonly canal: string
  readonly node: string
  /** What of it the server could not check; empty or left out where nothing. */
  readonly notChecked?: string
}

/** One event of these kinds, as the course needs it: to look at its kind says what it carries. */
export type EventOf<K extends Kind> = {
  [P in K]: Common & { readonly kind: P; readonly payload: PayloadOf<P> }
}[K]

export type CourseEvent = EventOf<Kind>

export const courseEvent = (of: Common, payload: EventPayload): CourseEvent =>
  ({ ...of, kind: payload.kind, payload }) as CourseEvent
