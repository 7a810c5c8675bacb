import { effect, signal } from '@preact/signals'
import * as calls from '@/api/calls'
import { Refused } from '@/api/problem'
import type { Treatment } from '@/api/shapes'
import { cachedSignal, show } from '@/store/cache/cached'
import { personId, sessionState, signIns } from '@/store/session/session'
import { casesSent, type Sent, sentOf } from './acknowledged-store'
import { treatmentName } from './outbox'
import { report } from './report'

// A server that is brought back from a copy has lost what came after it. What this phone had acknowledged is sent to it
// again, from the same device and with the same numbers, so that each event is there once and as it was.

const BATCH = 50 // events in one request, as the sender has it
const MOST_CASES = 20 // looked at by themselves after a sign-in; any other case when it is opened

interface SetBack {
  /** Entries of this person that the server had lost. */
  readonly mine: number
  /** Entries of others that were seen here and are not there now. */
  readonly others: number
}

/** What the server has lost of each case, as far as this phone knows. */
export const setBack = signal<ReadonlyMap<string, SetBack>>(new Map())

const lost = signal<readonly Sent[]>([])

/** This person's entries that the server has lost and does not show again yet, in the order in which they were done. */
export const lostOf = (caseId: string): readonly Sent[] =>
  lost.value.filter((entry) => entry.person === personId() && entry.caseId === caseId)

/** The treatment as the server has it now. What it has lost of this phone's entries is sent to it again first. */
export async function askTreatment(caseId: string): Promise<Treatment> {
  const person = personId()
  const asked = Date.now()
  const treatment = await calls.getTreatment(caseId)
  // A store that cannot be read says nothing of what was sent.
  const sent = await sentOf(person, caseId).catch((): readonly Sent[] => [])
  const there = new Set(treatment.events.map(({ id }) => id))
  // What was acknowledged after the question was asked may not be in its answer.
  const gone = sent.filter((entry) => entry.at < asked && !there.has(entry.id))
  if (gone.length === 0) return treatment
  note(caseId, treatment, gone)
  lost.value = [...lost.value.filter((entry) => entry.caseId !== caseId), ...gone]
  return bringBack(person, caseId, gone, treatment)
}

function note(caseId: string, treatment: Treatment, gone: readonly Sent[]): void {
  const there = new Set([...treatment.events.map(({ id }) => id), ...gone.map(({ id }) => id)])
  const before = cachedSignal<Treatment>(treatmentName(caseId)).value.value?.events ?? []
  const others = before.filter(({ id }) => !there.has(id)).length
  const known = setBack.value.get(caseId)
  const said = { mine: Math.max(gone.length, known?.mine ?? 0), others: Math.max(others, known?.others ?? 0) }
  setBack.value = new Map(setBack.value).set(caseId, said)
}

/** Sends what is gone, in the order of doing. What cannot be sent now is tried with the next question. */
async function bringBack(
  person: string,
  caseId: string,
  gone: readonly Sent[],
  treatment: Treatment,
): Promise<Treatment> {
  let latest = treatment
  try {
    for (const run of runsOf(gone)) latest = await again(caseId, person, run)
  } catch {
    // No answer, or a refusal: they stay on the screen as not sent.
  }
  const there = new Set(latest.events.map(({ id }) => id))
  lost.value = lost.value.filter((entry) => entry.caseId !== caseId || !there.has(entry.id))
  return latest
}

/** Entries of one device that follow each other, a batch at most: an emergency keeps its place among the work. */
function runsOf(gone: readonly Sent[]): Sent[][] {
  const runs: Sent[][] = []
  for (const entry of gone) {
    const run = runs.at(-1)
    if (run && run[0]?.device === entry.device && run.length < BATCH) run.push(entry)
    else runs.push([entry])
  }
  return runs
}

async function again(caseId: string, actor: string, run: readonly Sent[]): Promise<Treatment> {
  const events = run.map((entry) => entry.event)
  try {
    return await report(caseId, { device_id: run[0]?.device ?? '', actor_id: actor, events })
  } catch (error) {
    if (!(error instanceof Refused) || error.code !== 'sequence-gap') throw error
  }
  // What stood between was done too long ago to be kept here: each comes as from a device of its own, named by it.
  let treatment: Treatment | undefined
  for (const event of events)
    treatment = await report(caseId, { device_id: event.id, actor_id: actor, events: [{ ...event, device_seq: 1 }] })
  return treatment as Treatment
}

/** After each sign-in the cases of the last days are compared, those worked last first. */
export function startComparing(): void {
  effect(() => {
    if (signIns.value >= 0 && sessionState.value === 'in') void compare(personId())
  })
}

async function compare(person: string): Promise<void> {
  const cases = await casesSent(person).catch((): readonly string[] => [])
  for (const caseId of cases.slice(-MOST_CASES).reverse()) {
    if (person !== personId()) return
    try {
      const treatment = await askTreatment(caseId)
      if (setBack.value.has(caseId)) show(person, treatmentName(caseId), treatment)
    } catch {
      // Looked at when the case is opened.
    }
  }
}
