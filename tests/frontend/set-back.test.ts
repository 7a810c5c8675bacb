import { beforeEach, expect, test } from 'vitest'
import type { EventGiven } from '@/api/shapes'
import { replace } from '@/store/cache/cached'
import { casesSent, keepSent, sentOf } from '@/store/outbox/acknowledged-store'
import { recordEmergency } from '@/store/outbox/emergencies'
import { treatmentName, unsent } from '@/store/outbox/outbox'
import { type NewEvent, writeEvent } from '@/store/outbox/record'
import { send } from '@/store/outbox/sender'
import { askTreatment, lostOf, setBack } from '@/store/outbox/set-back'
import { signedIn } from './people'
import { problem, serve } from './server'
import { until } from './until'

// A server is brought back from a copy. The judge is a server that takes each device's events in their order, each id
// once, and refuses a gap, as the real one does (tests/faults holds the real one to it).

interface Stored extends EventGiven {
  device: string
}

let number = 0
let at = ''

beforeEach(() => {
  number += 1
  at = `restored-${number}`
  signedIn(`Priya of ${number}`)
})

function keeper() {
  let stored: Stored[] = []
  const answer = () => ({ body: { position: stored.length, course: null, canals: [], events: stored } })
  serve(({ method, body }) => {
    if (method === 'GET') return answer()
    const { device_id: device, events } = body as { device_id: string; events: EventGiven[] }
    for (const event of events) {
      if (stored.some((known) => known.id === event.id)) continue
      const last = stored.filter((event) => event.device === device).at(-1)?.device_seq ?? 0
      if (event.device_seq !== last + 1) return problem(409, 'sequence-gap')
      stored.push({ ...event, device })
    }
    return answer()
  })
  return {
    nodes: () => stored.map((event) => event.node),
    stored: () => stored,
    /** As it was after so many events. */
    restore: (position: number) => {
      stored = stored.slice(0, position)
    },
  }
}

const done = (node: string) =>
  ({
    plan_hash: 'h',
    seen_position: 0,
    canal: 'MB',
    node,
    payload: { kind: 'note', text: node },
  }) as unknown as NewEvent

async function work(...nodes: string[]) {
  for (const node of nodes) await writeEvent(at, done(node))
  await until(async () => {
    await send()
    expect(unsent(at).value).toEqual([])
  })
}

/** What is asked from now on is asked after what was acknowledged: the phone tells them apart by its milliseconds. */
function later() {
  const now = Date.now()
  return until(() => expect(Date.now()).toBeGreaterThan(now))
}

test('what was acknowledged is sent again by the next question, as it was, and each is there once', async () => {
  const server = keeper()
  unsent(at)
  await work('a', 'b', 'c', 'd')
  const before = server.stored()
  await later()
  server.restore(2)
  const treatment = await askTreatment(at)
  expect(server.nodes()).toEqual(['a', 'b', 'c', 'd'])
  expect(server.stored()).toEqual(before)
  expect(treatment.events.map((event) => event.node)).toEqual(['a', 'b', 'c', 'd'])
  expect(setBack.value.get(at)).toEqual({ mine: 2, others: 0 })
  expect(lostOf(at)).toEqual([])
})

test('what waits is sent behind what was lost: the gap is closed, nothing is refused', async () => {
  const server = keeper()
  unsent(at)
  await work('a', 'b', 'c')
  await later()
  server.restore(1)
  await work('d')
  expect(server.nodes()).toEqual(['a', 'b', 'c', 'd'])
  expect(unsent(at).value).toEqual([])
})

test('while it is on its way again it is still on the screen', async () => {
  const server = keeper()
  unsent(at)
  await work('a', 'b')
  await later()
  server.restore(1)
  let got = 0
  const { stored } = server
  serve(({ method }) => {
    got += 1
    return method === 'GET' ? { body: { position: 1, course: null, canals: [], events: stored() } } : 'nothing'
  })
  await askTreatment(at)
  expect(got).toBe(2)
  expect(lostOf(at).map(({ event }) => event.node)).toEqual(['b'])
})

test('where the phone does not have all of what stands between, a device of another name begins', async () => {
  const server = keeper()
  unsent(at)
  await work('a', 'b', 'c')
  await later()
  server.restore(0)
  // What was done first is too old to be kept: it is gone from the phone as well.
  const [first] = await sentOf(`id of Priya of ${number}`, at)
  if (first) await keepSent([{ ...first, at: 0 }])
  await casesSent(`id of Priya of ${number}`)
  await work('d', 'e')
  expect(server.nodes()).toEqual(['b', 'c', 'd', 'e'])
  expect(new Set(server.stored().map((event) => event.id)).size).toBe(4)
  await work('f')
  expect(server.nodes().at(-1)).toBe('f')
})

test('an emergency keeps its place among the work', async () => {
  const server = keeper()
  unsent(at)
  await work('a')
  recordEmergency(at, { plan_hash: 'h', seen_position: 0, payload: { kind: 'emergency', what: 'collapse' } })
  await until(() => expect(server.stored()).toHaveLength(2))
  await work('b')
  await until(async () => expect(await sentOf(`id of Priya of ${number}`, at)).toHaveLength(3))
  await later()
  const before = server.stored().map((event) => event.id)
  server.restore(0)
  await askTreatment(at)
  expect(server.stored().map((event) => event.id)).toEqual(before)
})

test('a server that has everything is asked nothing more', async () => {
  const server = keeper()
  unsent(at)
  await work('a', 'b')
  await later()
  await askTreatment(at)
  expect(setBack.value.has(at)).toBe(false)
  expect(server.nodes()).toEqual(['a', 'b'])
})

test('what others had told and is gone is counted and said', async () => {
  const server = keeper()
  unsent(at)
  await work('a', 'b')
  await replace(treatmentName(at), { events: [...server.stored(), { id: 'of Vale' }] })
  await later()
  server.restore(1)
  await askTreatment(at)
  expect(setBack.value.get(at)).toEqual({ mine: 1, others: 1 })
})
