import type { CourseEvent, Kind } from './course-event'

/** What somebody who sees a case is to it. */
export type Part = 'own_student' | 'looking_in' | 'took_over' | 'coordinator'

const WORKING: readonly Part[] = ['own_student', 'took_over']
const SUPERVISING: readonly Part[] = ['looking_in', 'took_over']
const ANY_OF_THEM: readonly Part[] = ['own_student', 'looking_in', 'took_over']

/** Who may tell what at the chair: the server's table once more, both held to one file. */
export const MAY_TELL: Readonly<Record<Kind, readonly Part[]>> = {
  step: WORKING,
  answer: WORKING,
  reading: WORKING,
  sign_off: SUPERVISING,
  inspected: WORKING,
  turn: WORKING,
  pause: ANY_OF_THEM,
  emergency: ANY_OF_THEM,
  corrected: ANY_OF_THEM,
  resume: SUPERVISING,
  close: WORKING,
  reopen: WORKING,
  replan: [],
  revoked: [],
  release: [],
  struck: [],
  ask: WORKING,
  come: SUPERVISING,
  wanted: SUPERVISING,
  take_over: SUPERVISING,
  give_back: ['took_over'],
  on_site: WORKING,
  dam: WORKING,
  image: WORKING,
  irrigated: WORKING,
  note: ANY_OF_THEM,
  // It names one's own entry alone.
  undo: ANY_OF_THEM,
}

/** Told by who works the case alone. */
export const ofWork = (kind: Kind): boolean => MAY_TELL[kind] === WORKING

/** Whether anything was done: what the server itself records, as a decision on a plan, is no work. */
export const workHasBegun = (events: readonly CourseEvent[]): boolean =>
  events.some((event) => MAY_TELL[event.kind].length > 0)
