import { waitingIn } from './pending'

// What was done at the chair and waits to be acknowledged: written by `record`, sent and taken out by `sender`.
// Written by hand: a queue of requests does not know that an entry is only gone with the answer that shows it, nor does every browser
// send in the background.

const outbox = waitingIn('outbox')

/** What this person did in the case and the server has not acknowledged. */
export const unsent = outbox.waitingOf

/** It is known what waits; a chair that is drawn before shows a step that was answered. */
export const unsentKnown = outbox.knownOf

export const { changed } = outbox

export const treatmentName = (caseId: string) => `treatment of ${caseId}`
