import * as calls from '@/api/calls'
import { Refused, Unreachable } from '@/api/problem'
import { refreshCase } from '@/store/cache/cases'
import { database } from '@/store/device/database'
import type { PendingReading } from '@/store/device/schema'
import { personId } from '@/store/session/session'
import { ofCase, rangeOfPerson, waitingIn } from './pending'

// Readings that were taken with no connection: sent in the order in which they were taken, for a later one of the same
// method takes the place of an earlier one. Each has an id of its own, so sending again is harmless.

const { waitingOf, changed } = waitingIn('taken')

type Given = Omit<PendingReading, 'person' | 'caseId' | 'seq'>

/** What this person took in the case and the server does not have. */
export const pendingReadingsOf = waitingOf

/** A reading goes to the server; where that cannot be reached, or earlier ones wait, it is kept on the phone. */
export async function takeReading(caseId: string, reading: Given): Promise<'sent' | 'kept'> {
  const before = pendingReadingsOf(caseId).value.some(
    (other) => other.canal === reading.canal && other.refused === undefined,
  )
  try {
    // Earlier ones wait, and this one must not overtake them: it is kept as if the server could not be reached.
    if (before) throw new Unreachable()
    await sendOne(reading)
  } catch (error) {
    if (!(error instanceof Unreachable)) throw error
    await keepPendingReading(caseId, reading)
    return 'kept'
  }
  await refreshCase(caseId)
  return 'sent'
}

async function keepPendingReading(caseId: string, reading: Given): Promise<void> {
  const person = personId()
  const tx = (await database()).transaction('taken', 'readwrite', { durability: 'strict' })
  const last = (await tx.store.getAllKeys(ofCase(person, caseId))).at(-1)
  await Promise.all([tx.store.put({ ...reading, person, caseId, seq: (last?.[2] ?? 0) + 1 }), tx.done])
  await changed(person, caseId)
}

/** Sends what waits of a person; what is refused stays with the server's sentence. Raises Unreachable, Refused by 401. */
export async function sendPendingReadings(person: string): Promise<void> {
  const sent = new Set<string>()
  for (const pending of await (await database()).getAll('taken', rangeOfPerson(person))) {
    if (pending.refused !== undefined || person !== personId()) continue
    try {
      await sendOne(pending)
      await dropPendingReading(pending)
    } catch (error) {
      if (!(error instanceof Refused) || !error.forGood) throw error
      await keepSentence(pending, error.fields[0]?.detail ?? error.message)
    }
    sent.add(pending.caseId)
  }
  for (const caseId of sent) await refreshCase(caseId)
}

function sendOne({
  canal,
  id,
  reading,
  junction,
}: Pick<PendingReading, 'canal' | 'id' | 'reading' | 'junction'>): Promise<unknown> {
  if (junction) return calls.addJunction(canal, { id, junction })
  if (reading) return calls.addReading(canal, { id, reading })
  return Promise.resolve()
}

/** Takes a reading off the phone: the server has it, or whoever took it throws it away. */
export async function dropPendingReading({ person, caseId, seq }: PendingReading): Promise<void> {
  await (await database()).delete('taken', [person, caseId, seq])
  await changed(person, caseId)
}

async function keepSentence(pending: PendingReading, refused: string): Promise<void> {
  await (await database()).put('taken', { ...pending, refused })
  await changed(pending.person, pending.caseId)
}

/** How much waits on this phone of the person who is signed in: work done and readings, of all cases. */
export async function countWaiting(): Promise<number> {
  const db = await database()
  const mine = rangeOfPerson(personId())
  return (await db.count('outbox', mine)) + (await db.count('taken', mine))
}
