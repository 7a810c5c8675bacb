import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { EventGiven, Session, Treatment } from '@/api/shapes'
import type { NewEvent } from '@/store/outbox/record'
import { type App, openApp } from './page'
import { problem, serve } from './server'
import { until } from './until'

const CASE = 'case-1'

let app: App

beforeEach(async () => {
  app = await openApp('ada')
})

// Nothing that was on its way goes on in the next test.
afterEach(() => {
  app.page.kill()
  vi.useRealTimers()
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
      if (stored.some((known) => known.id === event.id)) continue
      if (event.device_seq !== stored.length + 1) return problem(409, 'sequence-gap')
      stored.push(event)
    }
    return { body: { position: stored.length, course: null, canals: [], events: stored } }
  }
  return { stored, take }
}

const nodes = (events: readonly EventGiven[]) => events.map((event) => event.node)
const record = (node: string, caseId = CASE) => app.recordEvent(caseId, done(node))
const waiting = async () => (await app.database()).getAll('outbox')
const left = async () => (await waiting()).map((entry) => entry.event.node)

/** Sends again and again, as a phone does that finds a connection, until nothing is left. */
const sendAll = () =>
  until(async () => {
    await app.send()
    expect(await left()).toEqual([])
  })

describe('the outbox', () => {
  test('sends in the order of doing, and takes out what the server shows back', async () => {
    const { stored, take } = keeper()
    serve(({ body }) => take((body as { events: EventGiven[] }).events))
    const shown = app.unsent(CASE)
    for (const node of ['a', 'b', 'c']) await record(node)
    await sendAll()
    expect(nodes(stored)).toEqual(['a', 'b', 'c'])
    await until(() => expect(shown.value).toEqual([]))
  })

  test('asks only for what came after what it has, and still shows everything', async () => {
    const { stored, take } = keeper()
    const sent = serve(({ body }) => {
      const { after_id: after, events } = body as { after_id?: string; events: EventGiven[] }
      const whole = take(events)
      const from = stored.findIndex((event) => event.id === after) + 1
      return 'status' in whole
        ? whole
        : { body: { ...whole.body, after_id: after ?? null, events: stored.slice(from) } }
    })
    const shown = app.cachedSignal<Treatment>(app.treatmentName(CASE))
    for (const node of ['a', 'b', 'c']) {
      await record(node)
      await sendAll()
    }
    expect(sent.map(({ body }) => (body as { after_id?: string }).after_id)).toEqual([
      undefined,
      stored[0]?.id,
      stored[1]?.id,
    ])
    expect(shown.value.value?.events.map(({ node }) => node)).toEqual(['a', 'b', 'c'])
  })

  test('a server that was restored has not the event, and its answer takes the place of what was shown', async () => {
    const { stored, take } = keeper()
    serve(({ body }) => take((body as { events: EventGiven[] }).events))
    const shown = app.cachedSignal<Treatment>(app.treatmentName(CASE))
    app.show('ada', app.treatmentName(CASE), { position: 1, course: null, canals: [], events: [{ id: 'gone' }] })
    await record('a')
    await sendAll()
    expect(shown.value.value?.events.map(({ node }) => node)).toEqual(['a'])
    expect(stored).toHaveLength(1)
  })

  test('keeps everything while there is no answer, and sends it once afterwards', async () => {
    const { stored, take } = keeper()
    let online = false
    const sent = serve(({ body }) => (online ? take((body as { events: EventGiven[] }).events) : 'nothing'))
    await record('a')
    await record('b')
    await until(() => expect(sent.length).toBeGreaterThan(0))
    expect(await left()).toEqual(['a', 'b'])
    online = true
    await sendAll()
    expect(nodes(stored)).toEqual(['a', 'b'])
  })

  test('an answer that was lost on the way stores nothing twice', async () => {
    const { stored, take } = keeper()
    let lost = true
    const sent = serve(({ body }) => {
      const answer = take((body as { events: EventGiven[] }).events)
      return lost ? 'nothing' : answer
    })
    await record('a')
    await until(() => expect(nodes(stored)).toEqual(['a']))
    expect(await left()).toEqual(['a'])
    lost = false
    await sendAll()
    expect(sent.length).toBeGreaterThan(1)
    expect(nodes(stored)).toEqual(['a'])
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
    const shown = app.unsent(CASE)
    for (const node of ['a', 'b', 'c']) await record(node)
    await until(async () => {
      await app.send()
      expect(shown.value.map(({ event, refused }) => [event.node, refused])).toEqual([
        ['b', 'A slip.'],
        ['c', undefined],
      ])
    })
    await app.send()
    expect(nodes(stored)).toEqual(['a'])
    refusing = false
    const [entry] = shown.value
    if (entry) await app.sendAgain(entry)
    await sendAll()
    expect(nodes(stored)).toEqual(['a', 'b', 'c'])
  })

  test('without locks, where the connection is not secure, it sends all the same', async () => {
    const { stored, take } = keeper()
    serve(({ body }) => take((body as { events: EventGiven[] }).events))
    const { locks } = navigator
    Object.defineProperty(navigator, 'locks', { configurable: true, value: undefined })
    try {
      await record('a')
      await until(async () => expect(await left()).toEqual([]))
    } finally {
      Object.defineProperty(navigator, 'locks', { configurable: true, value: locks })
    }
    expect(nodes(stored)).toEqual(['a'])
  })

  describe('behind something that answers by itself', () => {
    /** The try is over: its pause has begun. */
    const pausing = () => until(() => expect(vi.getTimerCount()).toBe(1))

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
      // One moment each: where a token is missing, a try is more than one request.
      const tries = new Set<number>()
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
      serve(({ method, body }) => {
        if (method === 'POST') tries.add(performance.now())
        return between ? answer : take((body as { events: EventGiven[] }).events)
      })
      await record('a')
      await until(() => expect(tries.size).toBe(1))
      for (const [times, after_ms] of [1000, 2000, 4000, 8000, 16_000, 30_000, 30_000].entries()) {
        await pausing()
        await vi.advanceTimersByTimeAsync(after_ms - 1)
        expect(vi.getTimerCount()).toBe(1)
        expect(tries.size).toBe(times + 1)
        await vi.advanceTimersByTimeAsync(1)
        await until(() => expect(tries.size).toBe(times + 2))
      }
      expect(stored).toEqual([])
      await pausing()
      expect((await waiting()).map(({ refused }) => refused)).toEqual([undefined])
      between = false
      await vi.advanceTimersByTimeAsync(30_000)
      await until(async () => expect(await left()).toEqual([]))
      expect(nodes(stored)).toEqual(['a'])
    })

    test('once any request is answered, what waits is sent at once', async () => {
      const { stored, take } = keeper()
      let between = true
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
      serve(({ method, body }) => {
        if (between) return { html: '<h1>Sign in to this network</h1>' }
        return method === 'POST' ? take((body as { events: EventGiven[] }).events) : { body: { results: [] } }
      })
      await record('a')
      for (const after_ms of [1000, 2000, 4000, 8000]) {
        await pausing()
        await vi.advanceTimersByTimeAsync(after_ms)
      }
      await pausing()
      between = false
      await vi.advanceTimersByTimeAsync(3000)
      expect(stored).toEqual([])
      const { listFactors } = await import('@/api/calls')
      await listFactors()
      await until(() => expect(nodes(stored)).toEqual(['a']))
    })
  })

  test('one case never stops another, whatever the server does to it', async () => {
    const { stored, take } = keeper()
    serve(({ path, body }) => {
      if (path.includes('failing')) return problem(500, 'server-error')
      if (path.includes('silent')) return 'nothing'
      return take((body as { events: EventGiven[] }).events)
    })
    await record('x', 'a-failing')
    await record('y', 'b-silent')
    await record('a')
    await until(() => expect(nodes(stored)).toEqual(['a']))
    await until(async () => expect((await left()).sort()).toEqual(['x', 'y']))
  })

  test('a case that hangs holds up no other one', async () => {
    const { stored, take } = keeper()
    const hangs = vi.fn(() => new Promise<'nothing'>(() => undefined))
    serve(({ path, body }) => (path.includes('hanging') ? hangs() : take((body as { events: EventGiven[] }).events)))
    await record('x', 'a-hanging')
    await until(() => expect(hangs).toHaveBeenCalled())
    await record('a')
    await until(() => expect(nodes(stored)).toEqual(['a']))
  })

  test('an expired sign-in stops the sending and loses nothing', async () => {
    const sent = serve(() => problem(401, 'not-authenticated'))
    const shown = app.unsent(CASE)
    await record('a')
    await until(() => expect(sent.length).toBeGreaterThan(0))
    await until(() =>
      expect(shown.value.map(({ event, refused }) => [event.node, refused])).toEqual([['a', undefined]]),
    )
  })

  test('another person on this phone neither sees nor sends it', async () => {
    const { stored, take } = keeper()
    let online = false
    const sent = serve(({ body }) => (online ? take((body as { events: EventGiven[] }).events) : 'nothing'))
    await record('a')
    await until(() => expect(sent.length).toBeGreaterThan(0))
    const { session } = await import('@/store/session/session')
    session.value = { person: { id: 'bo', username: 'bo', name: 'Bo' }, memberships: [] } as unknown as Session
    online = true
    await app.send()
    expect(app.unsent(CASE).value).toEqual([])
    expect(stored).toEqual([])
    expect(await left()).toEqual(['a'])
  })
})
