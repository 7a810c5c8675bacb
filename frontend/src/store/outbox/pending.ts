import { type Signal, signal } from '@preact/signals'
import { database } from '@/store/device/database'
import { retrying } from '@/store/device/retry'
import type { Local } from '@/store/device/schema'
import { onTabMessage, postToTabs } from '@/store/device/tabs'
import { personId } from '@/store/session/session'

/** Where on the phone things wait to be sent, case by case. */
type Store = 'outbox' | 'taken'

const keyOf = (person: string, caseId: string) => `${person}\n${caseId}`

export const ofCase = (person: string, caseId: string) =>
  IDBKeyRange.bound([person, caseId, 0], [person, caseId, Number.MAX_SAFE_INTEGER])

export const rangeOfPerson = (person: string) => IDBKeyRange.bound([person], [person, []])

/** What waits in a store, shown the same in every tab of the phone. */
export function waitingIn<S extends Store>(store: S) {
  const shown = new Map<string, Signal<readonly Local[S]['value'][]>>()
  const loaded = signal<ReadonlySet<string>>(new Set())

  /** Shows what the store has of a case, where a screen of this tab shows the case. */
  async function look(person: string, caseId: string): Promise<void> {
    const key = keyOf(person, caseId)
    const waiting = shown.get(key)
    if (!waiting) return
    waiting.value = await (await database()).getAll(store, ofCase(person, caseId))
    if (!loaded.peek().has(key)) loaded.value = new Set([...loaded.peek(), key])
  }

  /** Looks until the store can be read: until then nothing is known of what waits, and no work is shown without it. */
  function lookUntilKnown(person: string, caseId: string): void {
    const retry = retrying(() => void look(person, caseId).then(retry.over, () => retry.later()))
    void look(person, caseId).catch(() => retry.later())
  }

  /** What waits of the case for the person who is signed in. */
  function waitingOf(caseId: string): Signal<readonly Local[S]['value'][]> {
    const person = personId()
    const pending = shown.get(keyOf(person, caseId))
    if (pending) return pending
    const made = signal<readonly Local[S]['value'][]>([])
    shown.set(keyOf(person, caseId), made)
    lookUntilKnown(person, caseId)
    return made
  }

  /** Whether the store was read: before that nothing is known of what waits. */
  const knownOf = (caseId: string): boolean => loaded.value.has(keyOf(personId(), caseId))

  /** Shows anew what waits of a case after it changed, in this tab and the others. */
  async function changed(person: string, caseId: string): Promise<void> {
    postToTabs({ kind: store, person, caseId })
    await look(person, caseId)
  }

  onTabMessage<Store>(store, ({ person, caseId }) => look(person, caseId))
  return { waitingOf, knownOf, changed }
}
