import { signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { personId } from '@/store/session/session'
import { type Ready, readReady, writeReady } from './emergency-store'

// What an emergency needs of a case lies apart from the case, so that it can be told and its first steps be read where
// the case itself is not on the screen.

const everyReady = signal<readonly Ready[]>([])

const of = (caseId: string) => everyReady.value.find((ready) => ready.person === personId() && ready.caseId === caseId)

const put = (ready: Ready) => {
  const others = everyReady.value.filter((other) => other.person !== ready.person || other.caseId !== ready.caseId)
  everyReady.value = [...others, ready]
}

/** Keeps what an emergency of this case would need, whenever the plan or the position is another. */
export function useKeepReady(caseId: string, facts: Omit<Ready, 'person' | 'caseId'>): void {
  useEffect(() => {
    const ready = { ...facts, person: personId(), caseId }
    put(ready)
    void writeReady(ready).catch(() => undefined)
  }, [caseId, facts.planHash, facts.position])
}

/** What was kept of the case; undefined where the phone never had it. */
export function useReady(caseId: string): Ready | undefined {
  const ready = of(caseId)
  useEffect(() => {
    if (of(caseId)) return
    void readReady(personId(), caseId)
      .then((kept) => kept && put(kept))
      .catch(() => undefined)
  }, [caseId])
  return ready
}
