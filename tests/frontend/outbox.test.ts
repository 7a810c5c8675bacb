import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { listFactors } from '@/api/calls'
import type { EventGiven, Session } from '@/api/shapes'
import { database } from '@/store/device/database'
import { unsent } from '@/store/outbox/outbox'
import { type NewEvent, writeEvent } from '@/store/outbox/record'
import { send, sendAgain } from '@/store/outbox/sender'
import { session } from '@/store/session/session'
import { problem, serve } from './server'

const CASE = 'case-1'

// The locks of a browser, as far as the outbox uses them: one holder at a time, others turn away.
let held = false
Object.defineProperty(navigator, 'locks', {
  configurable: true,
  value: {
    async request(_: string, __: object, work: (lock: object | null) => Promise<void>) {
      if (held) return work(null)
      held = true
      try {
        await work({})
      } finally {
        held = false
      }
    },
  },
})

beforeEach(() => {
  held = false
  session.value = { person: { id: 'ada', username: 'ada', name: 'Ada' }, memberships: [] } as unknown as Session
})

function done(node: string): NewEvent {
  const payload = { kind: 'step', exit: 'done', depth_um: null, stop_um: null, irrigant: null, volume_ml: null }
  return { plan_hash: 'h', seen_position: 0, canal: 'MB', node, payload } as NewEvent
}

/** A server that stores a device's events in their order, each once, as the real one does. */
function keeper() {
  const stored: EventGiven[] = []
  const take = (events: EventGiven[]) => {
    for (const event of events) {
      if (stored.some((one) => one.id === event.id)) continue
      if (event.device_seq !== stored.length + 1) return problem(409, 'sequence-gap')
      stored.push(event)
    }
    return { body: { position: stored.length, course: null, canals: [], events: stored } }
  }
  return { stored, take }
}

const nodes = (events: readonly EventGiven[]) => events.map((event) => event.node)
const left = async () => (await (await database()).getAll('outbox')).map((entry) => entry.event.node)
const settled = () => vi.waitFor(async () => expect(held).toBe(false))

describe('the outbox', () => {
  test('sends in the order of doing, and takes out what the server shows back', async () => {
    const { stored, take } = keeper()
    serve(({ body }) => take((body as { events: EventGiven[] }).events))
    for (const node of ['a', 'b', 'c']) await writeEvent(CASE, done(node))
    await settled()
    await send()
    expect(nodes(stored)).toEqual(['a', 'b', 'c'])
    expect(await left()).toEqual([])
    expect(unsent(CASE).value).toEqual([])
  })

  test('keeps everything while there is no answer, and sends it once afterwards', async () => {
    const { stored, take } = keeper()
    let online = false
    serve(({ body }) => (online ? take((body as { events: EventGiven[] }).events) : 'nothing'))
    await writeEvent(CASE, done('a'))
    await writeEvent(CASE, done('b'))
    await settled()
    expect(await left()).toEqual(['a', 'b'])
    online = true
    await send()
    expect(nodes(stored)).toEqual(['a', 'b'])
    expect(await left()).toEqual([])
  })

  test('an answer that was lost on the way stores nothing twice', async () => {
    const { stored, take } = keeper()
    let lost = true
    serve(({ body }) => {
      const answer = take((body as { events: EventGiven[] }).events)
      return lost ? 'nothing' : answer
    })
    await writeEvent(CASE, done('a'))
    await vi.waitFor(() => expect(nodes(stored)).toEqual(['a']))
    await settled()
    expect(await left()).toEqual(['a'])
    lost = false
    await send()
    expect(nodes(stored)).toEqual(['a'])
    expect(await left()).toEqual([])
  })

  test('what the server will not take stays, with its sentence, and nothing after it is sent', async () => {
    const { stored, take } = keeper()
    let refusing = true
    serve(({ body }) => {
      const { events } = body as { events: EventGiven[] }
      const bad = events.findIndex((event) => event.node === 'b')
      if (!refusing || bad < 0) return take(events)
      return problem(422, 'not-usable', [{ pointer: `#/events/${bad}/payload/depth_um`, detail: 'A slip.' }])
    })
    for (const node of ['a', 'b', 'c']) await writeEvent(CASE, done(node))
    await settled()
    await send()
    await send()
    expect(nodes(stored)).toEqual(['a'])
    const shown = unsent(CASE)
    await vi.waitFor(() =>
      expect(shown.value.map(({ event, refused }) => [event.node, refused])).toEqual([
        ['b', 'A slip.'],
        ['c', undefined],
      ]),
    )
    refusing = false
    const [entry] = shown.value
    if (entry) await sendAgain(entry)
    expect(nodes(stored)).toEqual(['a', 'b', 'c'])
  })

  test('without locks, where the connection is not secure, it sends all the same', async () => {
    const { stored, take } = keeper()
    serve(({ body }) => take((body as { events: EventGiven[] }).events))
    const { locks } = navigator
    Object.defineProperty(navigator, 'locks', { configurable: true, value: undefined })
    await writeEvent(CASE, done('a'))
    await vi.waitFor(async () => expect(await left()).toEqual([]))
    Object.defineProperty(navigator, 'locks', { configurable: true, value: locks })
    expect(nodes(stored)).toEqual(['a'])
  })

  describe('behind something that answers by itself', () => {
    afterEach(() => vi.useRealTimers())

    test.each([
      { html: '<h1>Sign in to this network</h1>' },
      { status: 403, html: '<h1>Sign in to this network</h1>' },
      { status: 404, html: '<h1>Not found</h1>' },
      { status: 413, html: '<h1>Too large</h1>' },
      { status: 204 },
      { body: {} },
      problem(403, 'token-missing'),
      problem(408, 'body-too-slow'),
      problem(429, 'too-often'),
      problem(503, 'busy'),
    ])('%o refuses nothing; it is tried again by itself, after pauses that grow', async (answer) => {
      const { stored, take } = keeper()
      let between = true
      const tries: number[] = []
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
      serve(({ method, body }) => {
        if (method === 'POST') tries.push(performance.now())
        return between ? answer : take((body as { events: EventGiven[] }).events)
      })
      await writeEvent(CASE, done('a'))
      const tried = (times: number) => vi.waitFor(() => expect(new Set(tries).size).toBe(times))
      await tried(1)
      for (const [times, after_ms] of [1000, 2000, 4000, 8000, 16_000, 30_000, 30_000].entries()) {
        await settled()
        await vi.advanceTimersByTimeAsync(after_ms - 1)
        expect(new Set(tries).size).toBe(times + 1)
        await vi.advanceTimersByTimeAsync(1)
        await tried(times + 2)
      }
      expect(stored).toEqual([])
      await settled()
      expect((await (await database()).getAll('outbox')).map(({ refused }) => refused)).toEqual([undefined])
      between = false
      await vi.advanceTimersByTimeAsync(30_000)
      await vi.waitFor(async () => expect(await left()).toEqual([]))
      expect(nodes(stored)).toEqual(['a'])
    })

    test('once any request is answered, what waits is sent at once', async () => {
      const { stored, take } = keeper()
      let between = true
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
      serve(({ method, body }) => {
        if (between) return { html: '<h1>Sign in to this network</h1>' }
        return method === 'POST' ? take((body as { events: EventGiven[] }).events) : { body: { factors: [] } }
      })
      await writeEvent(CASE, done('a'))
      await settled()
      for (const after_ms of [1000, 2000, 4000, 8000]) await vi.advanceTimersByTimeAsync(after_ms)
      await settled()
      between = false
      await vi.advanceTimersByTimeAsync(3000)
      expect(stored).toEqual([])
      await listFactors()
      await vi.waitFor(() => expect(nodes(stored)).toEqual(['a']))
    })
  })

  test('one case never stops another, whatever the server does to it', async () => {
    const { stored, take } = keeper()
    serve(({ path, body }) => {
      if (path.includes('failing')) return problem(500, 'server-error')
      if (path.includes('silent')) return 'nothing'
      return take((body as { events: EventGiven[] }).events)
    })
    await writeEvent('a-failing', done('x'))
    await writeEvent('b-silent', done('y'))
    await writeEvent(CASE, done('a'))
    await vi.waitFor(() => expect(nodes(stored)).toEqual(['a']))
    await vi.waitFor(async () => expect((await left()).sort()).toEqual(['x', 'y']))
  })

  test('a case that hangs holds up no other one', async () => {
    const { stored, take } = keeper()
    let free: (answer: 'nothing') => void = () => undefined
    serve(({ path, body }) => {
      if (path.includes('hanging')) return new Promise((resolve) => (free = resolve))
      return take((body as { events: EventGiven[] }).events)
    })
    await writeEvent('a-hanging', done('x'))
    await vi.waitFor(() => expect(free).not.toBeUndefined())
    await writeEvent(CASE, done('a'))
    await vi.waitFor(() => expect(nodes(stored)).toEqual(['a']))
    free('nothing')
  })

  test('an expired sign-in stops the sending and loses nothing', async () => {
    serve(() => problem(401, 'not-authenticated'))
    await writeEvent(CASE, done('a'))
    await settled()
    const shown = unsent(CASE)
    await vi.waitFor(() =>
      expect(shown.value.map(({ event, refused }) => [event.node, refused])).toEqual([['a', undefined]]),
    )
  })

  test('another person on this phone neither sees nor sends it', async () => {
    const { stored, take } = keeper()
    let online = false
    serve(({ body }) => (online ? take((body as { events: EventGiven[] }).events) : 'nothing'))
    await writeEvent(CASE, done('a'))
    await settled()
    session.value = { person: { id: 'bo', username: 'bo', name: 'Bo' }, memberships: [] } as unknown as Session
    online = true
    await send()
    expect(unsent(CASE).value).toEqual([])
    expect(stored).toEqual([])
    expect(await left()).toEqual(['a'])
  })
})
