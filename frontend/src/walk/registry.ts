import type { CourseEvent, Kind } from './course-event'
import { own } from './own'

/** What somebody who sees a case is to it. */
export type Part = 'own_student' | 'looking_in' | 'took_over' | 'coordinator'

interface EventRules {
  readonly toldBy: readonly Part[]
  /**
   * How its own actor takes it back: never, as something new answers it; while it is their last entry on the canal; or
   * at any time, as no step rests on it.
   */
  readonly undo: 'never' | 'last' | 'any_time'
}

const WORKING: readonly Part[] = ['own_student', 'took_over']
const SUPERVISING: readonly Part[] = ['looking_in', 'took_over']
const ANY_OF_THEM: readonly Part[] = ['own_student', 'looking_in', 'took_over']

const told = (toldBy: readonly Part[], undo: EventRules['undo'] = 'never'): EventRules => ({ toldBy, undo })

/**
 * Every kind of event: the server's table once more, both held to tests/shared/who-tells.json and taken-back.json. What
 * each carries, the API's types say.
 */
export const EVENTS: Readonly<Record<Kind, EventRules>> = {
  step: told(WORKING, 'last'),
  answer: told(WORKING),
  reading: told(WORKING),
  sign_off: told(SUPERVISING),
  inspected: told(WORKING, 'any_time'),
  turn: told(WORKING, 'any_time'),
  pause: told(ANY_OF_THEM, 'last'),
  emergency: told(ANY_OF_THEM),
  corrected: told(ANY_OF_THEM),
  resume: told(SUPERVISING),
  close: told(WORKING),
  reopen: told(WORKING),
  replan: told([]),
  revoked: told([]),
  release: told([]),
  struck: told([]),
  ask: told(WORKING, 'any_time'),
  come: told(SUPERVISING),
  wanted: told(SUPERVISING, 'any_time'),
  take_over: told(SUPERVISING),
  give_back: told(['took_over']),
  on_site: told(WORKING),
  dam: told(WORKING),
  image: told(WORKING, 'any_time'),
  irrigated: told(WORKING, 'any_time'),
  note: told(ANY_OF_THEM, 'any_time'),
  // It names one's own entry alone.
  undo: told(ANY_OF_THEM),
}

/** A newer server may tell kinds that this app does not know: nobody here tells them or takes them back. */
export const rulesOf = (kind: Kind): EventRules => own(EVENTS, kind) ?? told([])

/** Told by who works the case alone. */
export const ofWork = (kind: Kind): boolean => rulesOf(kind).toldBy === WORKING

/** Whether anything was done: what the server itself records, as a decision on a plan, is no work. */
export const workHasBegun = (events: readonly CourseEvent[]): boolean =>
  events.some((event) => rulesOf(event.kind).toldBy.length > 0)
