import { effect, type Signal, signal } from '@preact/signals'
import * as calls from '@/api/calls'
import { Refused, Unreachable } from '@/api/problem'
import type { EventGiven, Treatment } from '@/api/shapes'
import { database, readDevice, type Unsent, writeDevice } from './database'
import { replace } from './kept'
import { personId, signIns } from './session'
import { uuid7 } from './uuid7'

// What was done is written first, shown at once, and sent in order until the server has acknowledged it. The server
// takes a device's events by their number and knows each by its id, so sending again is harmless.

const BATCH = 50 // events in one request: minutes of work, and quick to answer on a thin line
const RETRY_MS = 4000

export const treatmentName = (caseId: string) => `treatment of ${caseId}`

const waiting = new Map<string, Signal<readonly Unsent[]>>()

/** What this person did in the case and the server has not acknowledged. */
export function unsent(caseId: string): Signal<readonly Unsent[]> {
  const key = `${personId()}\n${caseId}`
  const found = waiting.get(key)
  if (found) return found
  const made = signal<readonly Unsent[]>([])
  waiting.set(key, made)
  void load(caseId, made)
  return made
}

async function load(caseId: string, into: Signal<readonly Unsent[]>): Promise<void> {
  into.value = await (await database()).getAll('outbox', ofCase(personId(), caseId))
}

const ofCase = (person: string, caseId: string) =>
  IDBKeyRange.bound([person, caseId, 0], [person, caseId, Number.MAX_SAFE_INTEGER])

export type Done = Pick<EventGiven, 'plan_hash' | 'canal' | 'node' | 'told' | 'seen_position'>

/** Writes what was done, for good, before anything else; then it is shown and sent. */
export async function record(caseId: string, done: Done): Promise<void> {
  const person = personId()
  const shown = unsent(caseId)
  const counter = `events of ${person} in ${caseId}`
  const tx = (await database()).transaction(['outbox', 'device'], 'readwrite', { durability: 'strict' })
  const seq = (((await tx.objectStore('device').get(counter)) as number | undefined) ?? 0) + 1
  const event = { ...done, id: uuid7(), device_seq: seq, device_time: new Date().toISOString() }
  await tx.objectStore('outbox').add({ person, caseId, seq, event })
  await tx.objectStore('device').put(seq, counter)
  await tx.done
  await load(caseId, shown)
  void send()
}

/** Sends what waits, one case after the other; one tab of the phone at a time. */
export async function send(): Promise<void> {
  // Browsers have no locks where the connection is not secure; then this tab at least sends once at a time.
  const { locks } = navigator as Partial<Navigator>
  if (locks) return locks.request('outbox', { ifAvailable: true }, (lock) => (lock ? sendAll() : Promise.resolve()))
  if (sending) return
  sending = true
  await sendAll().finally(() => {
    sending = false
  })
}

let sending = false

async function sendAll(): Promise<void> {
  const person = personId()
  const every = await (await database()).getAll('outbox', IDBKeyRange.bound([person], [person, []]))
  for (const caseId of new Set(every.map((entry) => entry.caseId))) await sendCase(person, caseId)
}

async function sendCase(person: string, caseId: string): Promise<void> {
  const shown = unsent(caseId)
  for (;;) {
    const next = await (await database()).getAll('outbox', ofCase(person, caseId), BATCH)
    const refused = next.findIndex((entry) => entry.refused !== undefined)
    const batch = refused < 0 ? next : next.slice(0, refused)
    if (batch.length === 0 || person !== personId()) return
    try {
      const device = await deviceOf(person)
      const told = await calls.reportEvents(caseId, { device, events: batch.map((entry) => entry.event) })
      await acknowledge(batch, told)
      await load(caseId, shown)
    } catch (error) {
      if (!(error instanceof Refused) && !(error instanceof Unreachable)) throw error
      if (error instanceof Refused && error.status >= 400 && error.status < 500) {
        if (error.status !== 401) await refuse(batch, error)
        await load(caseId, shown)
      } else setTimeout(() => void send(), RETRY_MS)
      return
    }
  }
}

/** Only what the server shows back is taken out. */
async function acknowledge(batch: readonly Unsent[], told: Treatment): Promise<void> {
  const stored = new Set(told.events.map((event) => event.id))
  await replace(treatmentName(batch[0]?.caseId ?? ''), told)
  const tx = (await database()).transaction('outbox', 'readwrite', { durability: 'strict' })
  for (const { person, caseId, seq, event } of batch) {
    if (stored.has(event.id)) await tx.store.delete([person, caseId, seq])
  }
  await tx.done
}

/** The server's sentence stays with the entry it names; the entries before it are sent again without it. */
async function refuse(batch: readonly Unsent[], problem: Refused): Promise<void> {
  const number = problem.fields
    .map((field) => /^#\/events\/(\d+)/.exec(field.pointer)?.[1])
    .find((n) => n !== undefined)
  const entry = batch[Number(number ?? 0)] ?? batch[0]
  if (!entry) return
  await (await database()).put('outbox', { ...entry, refused: problem.fields[0]?.detail ?? problem.message })
}

/** Tries again what the server would not take. */
export async function sendAgain(entry: Unsent): Promise<void> {
  const { refused: _, ...fresh } = entry
  await (await database()).put('outbox', fresh)
  await load(entry.caseId, unsent(entry.caseId))
  await send()
}

/** A device's name is made once and kept; each person of a phone has their own, so that their events count apart. */
async function deviceOf(person: string): Promise<string> {
  const name = `device of ${person}`
  const known = await readDevice<string>(name)
  if (known) return known
  const made = uuid7()
  await writeDevice(name, made)
  return made
}

/** Sends what waits whenever the connection, the screen or the sign-in comes back. */
export function startOutbox(): void {
  effect(() => {
    if (signIns.value >= 0) void send()
  })
  addEventListener('online', () => void send())
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void send())
}
