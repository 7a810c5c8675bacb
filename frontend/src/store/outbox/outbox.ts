import { waitingIn } from './pending'

// What was done at the chair and waits to be acknowledged: written by `record`, sent and taken out by `sender`.
// Written by hand: a queue of requests does not know that an entry is gone only with the answer that shows it, and not every
// browser sends in the background.

const outbox = waitingIn('outbox')

/** What this person did in the case and the server has not acknowledged. */
export const unsent = outbox.waitingOf

/** Whether it is known what waits. A chair that is drawn before would show a step that was answered already. */
export const unsentKnown = outbox.knownOf

export const { changed } = outbox

export const treatmentName = (caseId: string) => `treatment of ${caseId}`
