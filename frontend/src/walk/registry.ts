import type { CourseEvent, Kind } from './course-event'
import { own } from './own'

/** What somebody who sees a case is to it. */
export type Part = 'own_student' | 'looking_in' | 'took_over' | 'coordinator'

interface EventRules {
  readonly toldBy: readonly Part[]
  /**
   * When the person who recorded it may take it back: never, as something new answers it; only while it is their last
   * entry on the canal; or at any time, as no other entry rests on it.
   */
  readonly undo: 'never' | 'last' | 'any_time'
}

const WORKING: readonly Part[] = ['own_student', 'took_over']
const SUPERVISING: readonly Part[] = ['looking_in', 'took_over']
const ANY_OF_THEM: readonly Part[] = ['own_student', 'looking_in', 'took_over']

const rules = (toldBy: readonly Part[], undo: EventRules['undo'] = 'never'): EventRules => ({ toldBy, undo })

/**
 * Every kind of event: the server's table once more, both held to tests/shared/who-tells.json and taken-back.json. What
 * each carries, the API's types say.
 */
export const EVENTS: Readonly<Record<Kind, EventRules>> = {
  step: rules(WORKING, 'last'),
  answer: rules(WORKING),
  reading: rules(WORKING),
  sign_off: rules(SUPERVISING),
  inspected: rules(WORKING, 'any_time'),
  turn: rules(WORKING, 'any_time'),
  pause: rules(ANY_OF_THEM, 'last'),
  emergency: rules(ANY_OF_THEM),
  corrected: rules(ANY_OF_THEM),
  resume: rules(SUPERVISING),
  close: rules(WORKING),
  reopen: rules(WORKING),
  replan: rules([]),
  revoked: rules([]),
  release: rules([]),
  struck: rules([]),
  ask: rules(WORKING, 'any_time'),
  come: rules(SUPERVISING),
  wanted: rules(SUPERVISING, 'any_time'),
  take_over: rules(SUPERVISING),
  give_back: rules(['took_over']),
  on_site: rules(WORKING),
  dam: rules(WORKING),
  image: rules(WORKING, 'any_time'),
  irrigated: rules(WORKING, 'any_time'),
  note: rules(ANY_OF_THEM, 'any_time'),
  // Anybody who tells something: an undo can only name an entry of the same person.
  undo: rules(ANY_OF_THEM),
}

/** A newer server may tell kinds that this app does not know: nobody here tells them or takes them back. */
export const rulesOf = (kind: Kind): EventRules => own(EVENTS, kind) ?? rules([])

/** Whether only somebody who works the case tells this kind. */
export const ofWork = (kind: Kind): boolean => rulesOf(kind).toldBy === WORKING

/** Whether anything was done: what the server itself records, as a decision on a plan, is no work. */
export const workHasBegun = (events: readonly CourseEvent[]): boolean =>
  events.some((event) => rulesOf(event.kind).toldBy.length > 0)
