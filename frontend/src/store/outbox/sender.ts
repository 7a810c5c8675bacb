import { effect } from '@preact/signals'
import { Refused, Unreachable } from '@/api/problem'
import type { EventGiven, Treatment } from '@/api/shapes'
import { show } from '@/store/cache/cached'
import { database, entry, writeDevice } from '@/store/device/database'
import { retrying, whenLookedAt } from '@/store/device/retry'
import type { Unsent } from '@/store/device/schema'
import { postToTabs } from '@/store/device/tabs'
import { uuid7 } from '@/store/device/uuid7'
import { findSessionAgain, personId, signIns } from '@/store/session/session'
import { keepSent } from './acknowledged-store'
import { changed, treatmentName } from './outbox'
import { ofCase, rangeOfPerson } from './pending'
import { sendPendingReadings } from './pending-readings'
import { report } from './report'
import { askTreatment } from './set-back'

// Sends what waits until the server has acknowledged it. The server takes a device's events by their number and knows
// each by its id, so sending again is harmless.

const GAP = 'sequence-gap'
const MOST_GAPS = 2 // once what was acknowledged is sent again, once a device of another name begins
const BATCH = 50 // events in one request: minutes of work, and quick to answer on a thin line
const ASLEEP_MS = 30_000 // longer than any request lasts: a tab that keeps the lock so long is not sending

/** What is on its way, by what it is: each case has a lane of its own, and the readings that were taken have one. */
interface Lane {
  wanted: boolean
  /** Whether all could be sent. */
  running: Promise<boolean>
}

const lanes = new Map<string, Lane>()
const retry = retrying(() => void send())

/** Sends what waits, every case for itself; settled once nothing is left that can be sent now. */
export async function send(): Promise<void> {
  const person = personId()
  try {
    const keys = await (await database()).getAllKeys('outbox', rangeOfPerson(person))
    const cases = [...new Set(keys.map(([, of]) => of))]
    const all = [
      ...cases.map((caseId) => lane(`outbox ${person} ${caseId}`, () => sendCase(person, caseId))),
      lane(`pending readings ${person}`, () => sendPendingReadings(person)),
    ]
    if ((await Promise.all(all)).every((sent) => sent)) retry.over()
  } catch (error) {
    void stopped(error)
  }
}

/**
 * Sends over one lane, one run at a time; what is recorded during a run is sent by one more run after it. Settles with
 * whether all could be sent.
 */
function lane(name: string, work: () => Promise<void>): Promise<boolean> {
  const there = lanes.get(name)
  if (there) there.wanted = true
  const made = there ?? { wanted: true, running: Promise.resolve(false) }
  if (!there) {
    lanes.set(name, made)
    made.running = whileWanted(name, made, work)
  }
  return made.running
}

async function whileWanted(name: string, of: Lane, work: () => Promise<void>): Promise<boolean> {
  try {
    while (of.wanted) {
      of.wanted = false
      await alone(name, work)
    }
    return true
  } catch (error) {
    await stopped(error)
    return false
  } finally {
    lanes.delete(name)
  }
}

/** One tab of the phone at a time. */
async function alone(name: string, work: () => Promise<void>): Promise<void> {
  // Browsers have no locks where the connection is not secure; then the server alone sees to it that none counts twice.
  const { locks } = navigator as Partial<Navigator>
  if (!locks) return work()
  try {
    await locks.request(name, { signal: AbortSignal.timeout(ASLEEP_MS) }, work)
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== 'TimeoutError') throw error
    await work()
  }
}

/** Why sending stopped, and what starts it again. Nothing was lost: an entry leaves only when it is acknowledged. */
async function stopped(error: unknown): Promise<void> {
  // A store that is full or closed for an upgrade is a DOMException.
  const later = error instanceof Unreachable || error instanceof DOMException || error instanceof Refused
  if (!later) throw error
  // Signed out: the next sign-in sends.
  if (error instanceof Refused && error.status === 401) return
  if (error instanceof Refused && error.otherPerson) return findSessionAgain()
  retry.later()
}

async function sendCase(person: string, caseId: string, gaps = 0): Promise<void> {
  const { device, base } = await deviceOf(person, caseId)
  while (person === personId()) {
    const next = await (await database()).getAll('outbox', ofCase(person, caseId), BATCH)
    // Nothing behind a refused entry is sent: the server takes a device's events in their order.
    const refused = next.findIndex((entry) => entry.refused !== undefined)
    const batch = refused < 0 ? next : next.slice(0, refused)
    if (batch.length === 0) return
    try {
      const events = batch.map(({ seq, event }) => ({ ...event, device_seq: seq - base }))
      const treatment = await report(caseId, { device_id: device, actor_id: person, events })
      await acknowledge(person, caseId, batch, treatment, { device, events })
    } catch (error) {
      const [first] = batch
      if (first && gaps < MOST_GAPS && error instanceof Refused && error.code === GAP)
        return closeGap(caseId, gaps, first, base).then(() => sendCase(person, caseId, gaps + 1))
      if (!(error instanceof Refused) || !error.forGood) throw error
      await refuse(batch, error)
    } finally {
      await changed(person, caseId)
    }
  }
}

/** Keeps the answer and takes out the entries that it shows back, in one transaction: both or neither. */
async function acknowledge(
  person: string,
  caseId: string,
  batch: readonly Unsent[],
  treatment: Treatment,
  { device, events }: { readonly device: string; readonly events: readonly EventGiven[] },
): Promise<void> {
  const stored = new Set(treatment.events.map((event) => event.id))
  const taken = batch.filter((unsent) => stored.has(unsent.event.id))
  // An answer that acknowledges nothing is no answer.
  if (taken.length === 0) throw new Unreachable()
  const shown = events.filter((event) => stored.has(event.id))
  // Kept among what was sent before it leaves the outbox: there is no moment in which the phone has it nowhere.
  await keepSent(shown.map((event) => ({ id: event.id, person, caseId, device, event, at: Date.now() })))
  const name = treatmentName(caseId)
  show(person, name, treatment)
  const tx = (await database()).transaction(['outbox', 'kept'], 'readwrite', { durability: 'strict' })
  await Promise.all([
    tx.objectStore('kept').put(entry(person, name, treatment)),
    ...taken.map(({ seq }) => tx.objectStore('outbox').delete([person, caseId, seq])),
    tx.done,
  ])
  postToTabs({ kind: 'kept', person, name })
}

/** The server's sentence stays with the entry it names; the entries before it are sent again without it. */
async function refuse(batch: readonly Unsent[], problem: Refused): Promise<void> {
  const number = problem.fields
    .map((field) => /^#\/events\/(\d+)/.exec(field.pointer)?.[1])
    .find((n) => n !== undefined)
  const named = batch[Number(number ?? 0)] ?? batch[0]
  if (named) await mark(named, problem.fields[0]?.detail ?? problem.message)
}

/** Tries again what the server would not take. */
export async function sendAgain(unsent: Unsent): Promise<void> {
  await mark(unsent, undefined)
  await changed(unsent.person, unsent.caseId)
  await send()
}

/** Puts the server's sentence on an entry, or takes it off; not on one that another tab has seen acknowledged since. */
async function mark({ person, caseId, seq }: Unsent, refused: string | undefined): Promise<void> {
  const tx = (await database()).transaction('outbox', 'readwrite', { durability: 'strict' })
  const unsent = await tx.store.get([person, caseId, seq])
  await Promise.all([unsent && tx.store.put(withSentence(unsent, refused)), tx.done])
}

function withSentence({ refused: _, ...unsent }: Unsent, refused: string | undefined): Unsent {
  return refused === undefined ? unsent : { ...unsent, refused }
}

/** Where the events of a case are counted from: a device's name, and the number after which its own begin. */
interface Counted {
  readonly device: string
  readonly base: number
}

const begunAnew = (person: string, caseId: string) => `device of ${person} begun anew in ${caseId}`

/** A device's name is made once and kept; each person of a phone has their own, so that their events count apart. */
async function deviceOf(person: string, caseId: string): Promise<Counted> {
  const name = `device of ${person}`
  const tx = (await database()).transaction('device', 'readwrite', { durability: 'strict' })
  const [known, anew] = (await Promise.all([tx.store.get(name), tx.store.get(begunAnew(person, caseId))])) as [
    string | undefined,
    Counted | undefined,
  ]
  const device = known ?? uuid7()
  await Promise.all([known === undefined && tx.store.put(device, name), tx.done])
  return anew ?? { device, base: 0 }
}

/**
 * The server lacks earlier events of this device: it was restored from a copy. First what this phone still has of them is
 * sent again. Where that does not close the gap, a device of another name begins with what waits.
 */
function closeGap(caseId: string, gaps: number, { person, seq }: Unsent, base: number): Promise<unknown> {
  if (gaps === 0) return askTreatment(caseId).then((treatment) => show(person, treatmentName(caseId), treatment))
  const anew: Counted = { device: uuid7(), base: Math.max(base, seq - 1) }
  return writeDevice(begunAnew(person, caseId), anew)
}

/** Sends what waits whenever the connection, the screen or the sign-in comes back. */
export function startSending(): void {
  effect(() => {
    if (signIns.value >= 0) void send()
  })
  whenLookedAt(() => void send())
}
