import { signal } from '@preact/signals'
import type { EventGiven } from '@/api/shapes'
import { database } from '@/store/device/database'
import { lookAtSpace } from '@/store/device/storage'
import { uuid7 } from '@/store/device/uuid7'
import { personId } from '@/store/session/session'
import { recordEmergency } from './emergencies'
import { changed } from './outbox'
import { send } from './sender'

export type NewEvent = Pick<EventGiven, 'plan_hash' | 'canal' | 'node' | 'payload' | 'seen_position'>

/** An answer that the phone could not write down. */
interface NotRecorded {
  readonly caseId: string
  readonly why: 'full' | 'other'
  again(): Promise<boolean>
}

/** The last answer that could not be written, until one can. */
export const notRecorded = signal<NotRecorded | undefined>(undefined)

/** Records what was done; false, and said on the screen, where the phone could not write it. */
export async function recordEvent(caseId: string, done: NewEvent): Promise<boolean> {
  if (done.payload.kind === 'emergency' || done.payload.kind === 'corrected') {
    recordEmergency(caseId, { ...done, payload: done.payload })
    return true
  }
  try {
    await writeEvent(caseId, done)
    notRecorded.value = undefined
    return true
  } catch (error) {
    if (!(error instanceof DOMException)) throw error
    const why = error.name === 'QuotaExceededError' ? 'full' : 'other'
    notRecorded.value = { caseId, why, again: () => recordEvent(caseId, done) }
    return false
  }
}

/**
 * Writes what was done, for good, before anything else; then it is shown and sent. Raises what the store raises, and
 * then nothing was recorded.
 */
export async function writeEvent(caseId: string, done: NewEvent): Promise<void> {
  const person = personId()
  const counter = `events of ${person} in ${caseId}`
  const tx = (await database()).transaction(['outbox', 'device'], 'readwrite', { durability: 'strict' })
  const seq = (((await tx.objectStore('device').get(counter)) as number | undefined) ?? 0) + 1
  const event = { ...done, id: uuid7(), device_seq: seq, device_time: new Date().toISOString() }
  await Promise.all([
    tx.objectStore('outbox').add({ person, caseId, seq, event }),
    tx.objectStore('device').put(seq, counter),
    tx.done,
  ])
  await changed(person, caseId)
  void send()
  void lookAtSpace()
}
