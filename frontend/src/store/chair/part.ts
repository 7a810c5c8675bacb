import { membership, personId } from '@/store/session/session'
import type { CaseState } from '@/walk/course'
import type { Kind } from '@/walk/course-event'
import { type Part, rulesOf } from '@/walk/registry'

/** What whoever is signed in is to the case; a student sees none but their own. */
export function partIn({ takenOver }: Pick<CaseState, 'takenOver'>): Part {
  switch (membership.value?.role) {
    case 'supervisor':
      return takenOver.by === personId() ? 'took_over' : 'looking_in'
    case 'coordinator':
      return 'coordinator'
    default:
      return 'own_student'
  }
}

/** Whether they may tell it: what the server would refuse is not offered and never kept. */
export const mayTell = (course: Pick<CaseState, 'takenOver'>, kind: Kind): boolean =>
  rulesOf(kind).toldBy.includes(partIn(course))

/** Whether they work the case, as its student or having taken over. */
export const works = (course: Pick<CaseState, 'takenOver'>): boolean => mayTell(course, 'step')
