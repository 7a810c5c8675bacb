import * as calls from '@/api/calls'
import type { Treatment } from '@/api/shapes'
import { cachedSignal } from '@/store/cache/cached'
import { treatmentName } from './outbox'

type Batch = Omit<Parameters<typeof calls.reportEvents>[1], 'after_id'>

/** Tells the server what was done, and gives all that it has of the case: it sends only what this phone has not yet. */
export async function report(caseId: string, batch: Batch): Promise<Treatment> {
  const had = cachedSignal<Treatment>(treatmentName(caseId)).peek().value
  const after = had?.events.at(-1)?.id
  const answer = await calls.reportEvents(caseId, after === undefined ? batch : { ...batch, after_id: after })
  // A server that was restored may not have the event, and an older one knows nothing of it: they send all.
  return had && after !== undefined && answer.after_id === after ? joined(had, answer) : answer
}

function joined(had: Treatment, answer: Treatment): Treatment {
  const outOfCourse = { ...had.course?.out_of_course, ...answer.course?.out_of_course }
  return {
    ...answer,
    after_id: null,
    events: [...had.events, ...answer.events],
    course: answer.course && { ...answer.course, out_of_course: outOfCourse },
  }
}
