import { effect } from '@preact/signals'
import * as calls from '@/api/calls'
import { Refused, Unreachable } from '@/api/problem'
import type { Treatment } from '@/api/shapes'
import { database, entry } from './database'
import { show } from './kept'
import { retrying, whenLookedAt } from './line'
import { changed, treatmentName } from './outbox'
import type { Unsent } from './schema'
import { findSessionAgain, personId, signIns } from './session'
import { tellTabs } from './tabs'
import { sendTaken } from './taken'
import { uuid7 } from './uuid7'
import { ofCase, ofPerson } from './waiting'

// Sends what waits until the server has acknowledged it. The server takes a device's events by their number and knows
// each by its id, so sending again is harmless.

const BATCH = 50 // events in one request: minutes of work, and quick to answer on a thin line
const ASLEEP_MS = 30_000 // longer than any request lasts: a tab that keeps the lock so long is not sending

let running: Promise<void> | undefined
let wanted = false
const retry = retrying(() => void send())

/** Sends what waits, one case after the other; settled once nothing is left that can be sent now. */
export function send(): Promise<void> {
  wanted = true
  running ??= sendWhileWanted()
  return running
}

/** What is recorded while the last batch is on its way is sent after it. */
async function sendWhileWanted(): Promise<void> {
  try {
    while (wanted) {
      wanted = false
      await alone(sendAll)
    }
  } finally {
    running = undefined
  }
}

/** One tab of the phone at a time. */
async function alone(work: () => Promise<void>): Promise<void> {
  // Browsers have no locks where the connection is not secure; then the server alone sees to it that none counts twice.
  const { locks } = navigator as Partial<Navigator>
  if (!locks) return work()
  try {
    await locks.request('outbox', { signal: AbortSignal.timeout(ASLEEP_MS) }, work)
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== 'TimeoutError') throw error
    await work()
  }
}

async function sendAll(): Promise<void> {
  const person = personId()
  try {
    const keys = await (await database()).getAllKeys('outbox', ofPerson(person))
    for (const caseId of new Set(keys.map(([, of]) => of))) await sendCase(person, caseId)
    await sendTaken(person)
    retry.over()
  } catch (error) {
    await stopped(error)
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

async function sendCase(person: string, caseId: string): Promise<void> {
  const device = await deviceOf(person)
  while (person === personId()) {
    const next = await (await database()).getAll('outbox', ofCase(person, caseId), BATCH)
    const refused = next.findIndex((one) => one.refused !== undefined)
    const batch = refused < 0 ? next : next.slice(0, refused)
    if (batch.length === 0) return
    try {
      const events = batch.map((one) => one.event)
      const told = await calls.reportEvents(caseId, { device, actor: person, events })
      await acknowledge(person, caseId, batch, told)
    } catch (error) {
      if (!(error instanceof Refused) || !error.forGood) throw error
      await refuse(batch, error)
    } finally {
      await changed(person, caseId)
    }
  }
}

/** The answer is kept and what it shows back is taken out, both or neither. */
async function acknowledge(person: string, caseId: string, batch: readonly Unsent[], told: Treatment): Promise<void> {
  const stored = new Set(told.events.map((event) => event.id))
  const taken = batch.filter((one) => stored.has(one.event.id))
  // An answer that acknowledges nothing is no answer.
  if (taken.length === 0) throw new Unreachable()
  const name = treatmentName(caseId)
  show(person, name, told)
  const tx = (await database()).transaction(['outbox', 'kept'], 'readwrite', { durability: 'strict' })
  await Promise.all([
    tx.objectStore('kept').put(entry(person, name, told)),
    ...taken.map(({ seq }) => tx.objectStore('outbox').delete([person, caseId, seq])),
    tx.done,
  ])
  tellTabs({ kind: 'kept', person, name })
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
export async function sendAgain(one: Unsent): Promise<void> {
  await mark(one, undefined)
  await changed(one.person, one.caseId)
  await send()
}

/** Only what is still there: another tab may have seen it acknowledged. */
async function mark({ person, caseId, seq }: Unsent, refused: string | undefined): Promise<void> {
  const tx = (await database()).transaction('outbox', 'readwrite', { durability: 'strict' })
  const found = await tx.store.get([person, caseId, seq])
  await Promise.all([found && tx.store.put(withSentence(found, refused)), tx.done])
}

function withSentence({ refused: _, ...one }: Unsent, refused: string | undefined): Unsent {
  return refused === undefined ? one : { ...one, refused }
}

/** A device's name is made once and kept; each person of a phone has their own, so that their events count apart. */
async function deviceOf(person: string): Promise<string> {
  const name = `device of ${person}`
  const tx = (await database()).transaction('device', 'readwrite', { durability: 'strict' })
  const known = (await tx.store.get(name)) as string | undefined
  const device = known ?? uuid7()
  await Promise.all([known === undefined && tx.store.put(device, name), tx.done])
  return device
}

/** Sends what waits whenever the connection, the screen or the sign-in comes back. */
export function startSending(): void {
  effect(() => {
    if (signIns.value >= 0) void send()
  })
  whenLookedAt(() => void send())
}
