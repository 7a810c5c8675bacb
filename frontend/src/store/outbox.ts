import { type Signal, signal } from '@preact/signals'
import { database } from './database'
import type { Unsent } from './schema'
import { personId } from './session'
import { onHeard, tellTabs } from './tabs'

// What waits to be acknowledged: shown here, written by `record`, sent and taken out by `sender`.

export const treatmentName = (caseId: string) => `treatment of ${caseId}`

const waiting = new Map<string, Signal<readonly Unsent[]>>()

const keyOf = (person: string, caseId: string) => `${person}\n${caseId}`

export const ofCase = (person: string, caseId: string) =>
  IDBKeyRange.bound([person, caseId, 0], [person, caseId, Number.MAX_SAFE_INTEGER])

export const ofPerson = (person: string) => IDBKeyRange.bound([person], [person, []])

/** What this person did in the case and the server has not acknowledged. */
export function unsent(caseId: string): Signal<readonly Unsent[]> {
  const person = personId()
  const found = waiting.get(keyOf(person, caseId))
  if (found) return found
  const made = signal<readonly Unsent[]>([])
  waiting.set(keyOf(person, caseId), made)
  // A store that cannot be opened says so itself, and is looked at again with the next entry.
  void look(person, caseId).catch(() => undefined)
  return made
}

/** Shows what the store has of a case, where a screen of this tab shows the case. */
async function look(person: string, caseId: string): Promise<void> {
  const shown = waiting.get(keyOf(person, caseId))
  if (shown) shown.value = await (await database()).getAll('outbox', ofCase(person, caseId))
}

/** What waits of a case has changed: it is shown anew, in this tab and the others. */
export async function changed(person: string, caseId: string): Promise<void> {
  tellTabs({ kind: 'outbox', person, caseId })
  await look(person, caseId)
}

onHeard('outbox', ({ person, caseId }) => look(person, caseId))
