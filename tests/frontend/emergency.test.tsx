import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test, vi } from 'vitest'
import type { EventGiven, EventPayload } from '@/api/shapes'
import { EmergencyDoor } from '@/panels/emergency/emergency-door'
import { SignIn } from '@/screens/sign-in/sign-in'
import { emergenciesWaiting, recordEmergency, startEmergencies, wayOf } from '@/store/outbox/emergencies'
import { readEmergencies, writeReady } from '@/store/outbox/emergency-store'
import { unsent } from '@/store/outbox/outbox'
import { recordEvent, writeEvent } from '@/store/outbox/record'
import { sessionState, signIns } from '@/store/session/session'
import { signedIn } from './people'
import { problem, serve } from './server'

// An emergency is shown at the touch and goes out past everything else. The server here stores each id once, in the
// order of each device, as the real one does (tests/cases/test_treatment.py).

let number = 0
let at = ''

beforeEach(() => {
  vi.restoreAllMocks()
  number += 1
  at = `case-${number}`
  signedIn(`Priya ${number}`)
})

const HAPPENED: Parameters<typeof recordEmergency>[1] = {
  plan_hash: 'h',
  seen_position: 0,
  payload: { kind: 'emergency', what: 'collapse', note: '', before: [] },
}
const note = (text: string) => ({ ...HAPPENED, canal: '', node: '', payload: { kind: 'note', text } as EventPayload })

interface Batch {
  device_id: string
  actor_id: string
  events: EventGiven[]
}

/** What the server took, by case; `fails` says how it answers instead. */
function keeper(fails: (batch: Batch) => ReturnType<typeof problem> | 'nothing' | undefined = () => undefined) {
  const stored: Batch[] = []
  serve(({ body }) => {
    const batch = body as Batch
    const failed = fails(batch)
    if (failed) return failed
    if (!stored.some(({ events }) => events[0]?.id === batch.events[0]?.id)) stored.push(batch)
    const events = stored.flatMap((batch) => batch.events)
    return { body: { position: events.length, course: null, canals: [], events } }
  })
  return stored
}

const ofEmergency = ({ events }: Batch) => events[0]?.payload.kind === 'emergency'
test('it is there in the same moment, before anything was written or sent', () => {
  keeper(() => 'nothing')
  recordEmergency(at, HAPPENED)
  expect(emergenciesWaiting(at).map(({ event }) => event.payload)).toEqual([HAPPENED.payload])
})

test('it comes from a device of its own that is named by it', async () => {
  const stored = keeper()
  recordEmergency(at, HAPPENED)
  await waitFor(() => expect(emergenciesWaiting(at)).toEqual([]))
  const [{ device_id: device, actor_id: actor, events } = { device_id: '', actor_id: '', events: [] }] = stored
  expect(events.map(({ id, device_seq }) => [id, device_seq])).toEqual([[device, 1]])
  expect(actor).toBe(`id of Priya ${number}`)
})

test.each([
  ['full', () => vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(thrown('QuotaExceededError'))],
  ['of a newer app', () => vi.spyOn(indexedDB, 'open').mockImplementation(thrown('VersionError'))],
])('with a store that is %s it is told, shown and sent', async (_, breakStore) => {
  breakStore()
  const stored = keeper()
  expect(await recordEvent(at, { ...HAPPENED, canal: '', node: '' })).toBe(true)
  await waitFor(() => expect(stored.filter(ofEmergency)).toHaveLength(1))
})

function thrown(name: string) {
  return () => {
    throw new DOMException('not now', name)
  }
}

test('with no answer it is kept, and written down once the store can', async () => {
  keeper(() => 'nothing')
  const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(thrown('QuotaExceededError'))
  recordEmergency(at, HAPPENED)
  await waitFor(() => expect(wayOf(at)?.why).toBe('no answer'))
  expect(await readEmergencies()).toEqual([])
  full.mockRestore()
  await waitFor(async () => expect(await readEmergencies()).toHaveLength(1))
})

test('it goes past an entry that the server refuses, and the reason said is its own', async () => {
  const stored = keeper((batch) => (ofEmergency(batch) ? undefined : problem(422, 'not-usable')))
  await writeEvent(at, note('refused'))
  recordEmergency(at, HAPPENED)
  await waitFor(() => expect(stored.filter(ofEmergency)).toHaveLength(1))
  expect(wayOf(at)).toBeUndefined()
})

test('it names what was done before it and still waits, so that the halt does not stop that', async () => {
  keeper(() => 'nothing')
  unsent(at)
  await writeEvent(at, note('before'))
  await waitFor(() => expect(unsent(at).value).toHaveLength(1))
  const [before] = unsent(at).value
  recordEmergency(at, HAPPENED)
  expect(emergenciesWaiting(at)[0]?.event.payload).toMatchObject({ before: [before?.event.id] })
})

test.each([
  ['server fails', problem(500, 'server-error')],
  ['refused', problem(403, 'not-allowed', [{ pointer: '#/events/0', detail: 'Not your case.' }])],
] as const)('the true reason is said: %s', async (why, answer) => {
  keeper(() => answer)
  recordEmergency(at, HAPPENED)
  await waitFor(() => expect(wayOf(at)?.why).toBe(why))
  expect(emergenciesWaiting(at)).toHaveLength(1)
})

test('a case that fails does not hold up an emergency of another', async () => {
  const stored = keeper((batch) =>
    batch.events[0]?.payload.kind === 'note' ? problem(500, 'server-error') : undefined,
  )
  await writeEvent(`${at}-other`, note('fails'))
  recordEmergency(at, HAPPENED)
  await waitFor(() => expect(stored.filter(ofEmergency)).toHaveLength(1))
})

test('a try that hangs does not hold up the next one', async () => {
  let tries = 0
  const stored: unknown[] = []
  serve(({ body }) => {
    tries += 1
    if (tries === 1) return new Promise(() => undefined)
    stored.push(body)
    return { body: { position: 1, course: null, canals: [], events: (body as Batch).events } }
  })
  recordEmergency(at, HAPPENED)
  await waitFor(() => expect(stored).toHaveLength(1))
})

test('what was told before the app was closed is sent when it is opened', async () => {
  keeper(() => 'nothing')
  recordEmergency(at, HAPPENED)
  // What other tests told may still be there.
  const kept = async () => (await readEmergencies()).filter(({ caseId }) => caseId === at)
  await waitFor(async () => expect(await kept()).toHaveLength(1))
  vi.resetModules()
  const again = await import('@/store/outbox/emergencies')
  const { session } = await import('@/store/session/session')
  const { somebody } = await import('./people')
  session.value = somebody(`Priya ${number}`)
  const stored = keeper()
  again.startEmergencies()
  await waitFor(() => expect(stored.filter(ofEmergency)).toHaveLength(1))
  await waitFor(async () => expect(await kept()).toEqual([]))
})

test('a sign-in that ran out covers neither the emergency nor its first steps; signed in, it goes out under its teller', async () => {
  const signedOut = { now: true }
  const stored = keeper(() => (signedOut.now ? problem(401, 'not-authenticated') : undefined))
  const says = 'Invented first step.'
  const advice = [{ about: 'emergency', key: 'collapse', says, source: 'nobody', know: 'from memory' }] as never
  await writeReady({ person: `id of Priya ${number}`, caseId: at, planHash: 'h', position: 3, advice })
  startEmergencies()
  sessionState.value = 'expired'
  render(<SignIn again above={<EmergencyDoor caseId={at} />} />)
  await waitFor(() => expect(screen.getByRole('button', { name: 'Problem' })).toBeTruthy())
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
  fireEvent.click(screen.getByRole('button', { name: 'Problem' }))
  fireEvent.click(screen.getByText('The patient collapses'))
  await waitFor(() => expect(screen.getByText(says)).toBeTruthy())
  expect(screen.getByText(/NOT SENT: call out. Your sign-in has run out/)).toBeTruthy()
  expect(stored).toEqual([])
  signedOut.now = false
  sessionState.value = 'in'
  signIns.value += 1
  await waitFor(() => expect(stored.map(({ actor_id }) => actor_id)).toEqual([`id of Priya ${number}`]))
  await waitFor(() => expect(screen.getByText('Sent: it stands first on the supervisors’ list.')).toBeTruthy())
})

test('it was not so: said on the same lane, after what it is about', async () => {
  const stored = keeper()
  render(<EmergencyDoor caseId={at} />)
  recordEmergency(at, HAPPENED)
  const [unsent] = emergenciesWaiting(at)
  recordEmergency(at, { ...HAPPENED, payload: { kind: 'corrected', corrects: unsent?.id ?? '', what: null, note: '' } })
  await waitFor(() => expect(screen.getByText(/It was not so, says Priya/)).toBeTruthy())
  await waitFor(() => expect(emergenciesWaiting(at)).toEqual([]))
  expect(stored.map(({ events }) => events[0]?.payload.kind)).toEqual(['emergency', 'corrected'])
})
