import { effect, signal, untracked } from '@preact/signals'
import { Refused, Unreachable } from '@/api/problem'
import type { EventGiven, Treatment } from '@/api/shapes'
import { cachedSignal, replace } from '@/store/cache/cached'
import { whenLookedAt } from '@/store/device/retry'
import { onTabMessage, postToTabs } from '@/store/device/tabs'
import { uuid7 } from '@/store/device/uuid7'
import { findSessionAgain, personId, sessionState, signIns } from '@/store/session/session'
import type { PayloadOf } from '@/walk/course-event'
import type { Why } from '@/words/emergency'
import { keepSent } from './acknowledged-store'
import { readEmergencies, removeEmergency, type UnsentEmergency, writeEmergency } from './emergency-store'
import { treatmentName, unsent } from './outbox'
import { report } from './report'

// An emergency is shown at the touch, before it is written, and sent without waiting for the store. It goes on a lane of
// its own: each comes from a device of its own, named by its own id, so that nothing else that waits holds it up.

const EVERY_MS = 2000 // between two tries: five seconds after the line is good again a supervisor sees it
const AT_ONCE = 2 // tries under way: one that hangs on a lost connection must not hold up the next
const REFUSED_MS = 30_000 // what the server refuses is asked again, slowly: somebody may have put it right there

export type OfEmergency = PayloadOf<'emergency' | 'corrected'>
type Given = Pick<EventGiven, 'plan_hash' | 'seen_position'> & { payload: OfEmergency }

export interface Way {
  readonly why: Why
  /** The server's own sentence, where it has one. */
  readonly says: string
}

const ON_THE_WAY: Way = { why: 'on the way', says: '' }
const SIGNED_OUT: Way = { why: 'signed out', says: '' }

interface Kept {
  readonly entry: UnsentEmergency
  readonly written: boolean
  readonly sent: boolean
  readonly way: Way
}

const every = signal<readonly Kept[]>([])
const flying = new Map<string, number>()
const refusedAt = new Map<string, number>()
let timer: ReturnType<typeof setTimeout> | undefined

const set = (id: string, over: Partial<Kept>) => {
  every.value = every.value.map((emergency) => (emergency.entry.id === id ? { ...emergency, ...over } : emergency))
}

const mine = (caseId?: string) =>
  every.value.filter(({ entry }) => entry.person === personId() && (caseId === undefined || entry.caseId === caseId))

/** What this person told of the case and the server has not shown back, in order. */
export const emergenciesWaiting = (caseId: string): readonly UnsentEmergency[] =>
  mine(caseId).flatMap((emergency) => (emergency.sent ? [] : [emergency.entry]))

/** All that this person told of the case since the app was opened, or that still waits; sent or not. */
export const emergenciesTold = (caseId: string): readonly UnsentEmergency[] =>
  mine(caseId).map((emergency) => emergency.entry)

/** Why the first of the case is not with the server; undefined where nothing waits. */
export const wayOf = (caseId: string): Way | undefined => mine(caseId).find((emergency) => !emergency.sent)?.way

/** How many of each case wait, of the person who is signed in. */
export const emergenciesByCase = (): readonly UnsentEmergency[] =>
  mine().flatMap((emergency) => (emergency.sent ? [] : [emergency.entry]))

/** Shows it at once; then it is sent and written, each until it succeeds, whichever is first. */
export function recordEmergency(caseId: string, emergency: Given): void {
  const id = uuid7()
  const before =
    emergency.payload.kind === 'emergency' ? { before: unsent(caseId).value.map(({ event }) => event.id) } : {}
  const payload = { ...emergency.payload, ...before }
  const event: EventGiven = {
    ...emergency,
    payload,
    id,
    canal: '',
    node: '',
    device_seq: 1,
    device_time: new Date().toISOString(),
  }
  const entry: UnsentEmergency = { id, person: personId(), caseId, event }
  every.value = [...every.value, { entry, written: false, sent: false, way: ON_THE_WAY }]
  attend()
}

/** One try for whatever is not yet sent or not yet written, and again soon while something is left. */
function attend(): void {
  clearTimeout(timer)
  for (const { entry, written, sent } of every.value) if (!written && !sent) void keep(entry)
  for (const caseId of new Set(emergenciesByCase().map((entry) => entry.caseId))) void sendFirst(caseId)
  if (every.value.some((emergency) => !emergency.sent)) timer = setTimeout(attend, EVERY_MS)
}

async function keep(entry: UnsentEmergency): Promise<void> {
  try {
    await writeEmergency(entry)
    set(entry.id, { written: true })
    postToTabs({ kind: 'emergency' })
    // Sent while it was being written.
    if (every.value.some((known) => known.entry.id === entry.id && known.sent)) await removeEmergency(entry.id)
  } catch {
    // A full or broken store: tried again.
  }
}

/** Those of one case in their order; one case never waits for another. */
async function sendFirst(caseId: string): Promise<void> {
  const [entry] = emergenciesWaiting(caseId)
  if (!entry || (flying.get(entry.id) ?? 0) >= AT_ONCE) return
  // The next sign-in sends it.
  if (sessionState.value === 'expired' || sessionState.value === 'out') return set(entry.id, { way: SIGNED_OUT })
  if (performance.now() - (refusedAt.get(entry.id) ?? -REFUSED_MS) < REFUSED_MS) return
  flying.set(entry.id, (flying.get(entry.id) ?? 0) + 1)
  try {
    acknowledge(entry, await report(caseId, { device_id: entry.id, actor_id: entry.person, events: [entry.event] }))
    void sendFirst(caseId)
  } catch (error) {
    const way = wayIn(error)
    if (way.why === 'refused') refusedAt.set(entry.id, performance.now())
    if (way.why === 'other person') void findSessionAgain()
    set(entry.id, { way })
  } finally {
    flying.set(entry.id, (flying.get(entry.id) ?? 1) - 1)
  }
}

function acknowledge(entry: UnsentEmergency, treatment: Treatment): void {
  // An answer that does not show it back is no answer.
  if (!treatment.events.some((event) => event.id === entry.id)) throw new Unreachable()
  const name = treatmentName(entry.caseId)
  const shown = cachedSignal<Treatment>(name).value.value
  // A slow answer must not take away what a quicker one has shown since.
  if (entry.person === personId() && treatment.position >= (shown?.position ?? 0)) void replace(name, treatment)
  const { id, person, caseId, event } = entry
  void keepSent([{ id, person, caseId, device: id, event, at: Date.now() }])
  set(entry.id, { sent: true })
  void removeEmergency(entry.id).catch(() => undefined)
}

function wayIn(error: unknown): Way {
  if (!(error instanceof Refused)) return { why: 'no answer', says: '' }
  if (error.status === 401) return SIGNED_OUT
  if (error.otherPerson) return { why: 'other person', says: error.message }
  return { why: error.forGood ? 'refused' : 'server fails', says: error.fields[0]?.detail ?? error.message }
}

/** What was told before the app was closed, or in another tab. */
async function load(): Promise<void> {
  const entries = await readEmergencies().catch((): readonly UnsentEmergency[] => [])
  const known = new Set(every.value.map((emergency) => emergency.entry.id))
  const unknown = entries.filter((entry) => !known.has(entry.id))
  if (unknown.length === 0) return
  every.value = [...every.value, ...unknown.map((entry) => ({ entry, written: true, sent: false, way: ON_THE_WAY }))]
  attend()
}

onTabMessage('emergency', load)

/** Reads what waits, and sends it now and whenever the connection, the screen or the sign-in comes back. */
export function startEmergencies(): void {
  void load()
  effect(() => {
    if (signIns.value >= 0 && sessionState.value === 'in') untracked(attend)
  })
  whenLookedAt(attend)
}
