import { effect } from '@preact/signals'
import { cleanup, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { AsOf } from '@/parts/as-of'
import { Worklist } from '@/screens/worklist/worklist'
import { ask, cachedSignal, refresh, replace } from '@/store/cache/cached'
import { useCached, usePolling } from '@/store/cache/hooks'
import { read } from '@/store/device/database'
import { personId } from '@/store/session/session'
import { signedIn } from './people'
import { serve } from './server'
import { until } from './until'

// The slow line of these tests is one whose every answer takes longer than the time from one asking to the next.

let turn = 0
/** A name of its own for each test: what is in memory outlives one. */
let name = ''

beforeEach(() => {
  turn += 1
  name = `list ${turn}`
  signedIn(`Priya ${turn}`)
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance', 'Date'], now: Date.UTC(2026, 2, 5, 10, 42) })
})

afterEach(() => {
  cleanup()
  vi.useRealTimers()
})

const later_ms = (ms: number) => vi.advanceTimersByTimeAsync(ms)
const shown = () => cachedSignal(name).value

/** A server whose answers take so long, and say when the question reached it; `line.lost` when no answer comes. */
function slowServer(takes_ms: number) {
  const line = { takes_ms, lost: false, at_once: 0, most_at_once: 0, asked: [] as number[] }
  const begun = Date.now()
  const how = async () => {
    const asked = Date.now() - begun
    line.asked.push(asked)
    line.at_once += 1
    line.most_at_once = Math.max(line.most_at_once, line.at_once)
    await new Promise((resolve) => setTimeout(resolve, line.takes_ms))
    line.at_once -= 1
    if (line.lost) throw new (await import('@/api/problem')).Unreachable()
    return asked
  }
  return { line, how }
}

function List({ of, how, every_ms }: { of: string; how: () => Promise<number>; every_ms?: number }) {
  const kept = useCached(of, how)
  usePolling(every_ms !== undefined, kept, every_ms)
  return <output>{`${kept.value ?? 'none'} ${kept.state}`}</output>
}

describe('a list that is asked for every 3 seconds', () => {
  test.each([4000, 8000, 100])(
    'shows every answer where answers take %i ms, never asks twice at once',
    async (takes_ms) => {
      const { line, how } = slowServer(takes_ms)
      const seen: unknown[] = []
      const end = effect(
        () => void (cachedSignal(name).value.state === 'fresh' && seen.push(cachedSignal(name).value.value)),
      )
      render(<List of={name} how={how} every_ms={3000} />)
      const cycle_ms = Math.max(takes_ms, 3000)
      await later_ms(4 * cycle_ms + 100)
      end()
      expect(seen).toEqual(line.asked.slice(0, seen.length))
      expect(seen.length).toBeGreaterThanOrEqual(4)
      expect(seen.length).toBeLessThanOrEqual(5)
      expect(line.most_at_once).toBe(1)
    },
  )

  test('is asked for once, however many parts of the screen show it', async () => {
    const { line, how } = slowServer(100)
    for (const _ of [1, 2, 3]) render(<List of={name} how={how} every_ms={3000} />)
    await later_ms(6200)
    expect(line.asked).toEqual([0, 3000, 6000])
  })

  test('says that there is no connection, and asks again after pauses that grow to its own pace', async () => {
    const { line, how } = slowServer(100)
    render(<List of={name} how={how} every_ms={3000} />)
    await later_ms(200)
    line.lost = true
    await later_ms(20_000)
    expect(screen.getByRole('status').textContent).toBe('0 offline')
    expect(line.asked.slice(0, 6)).toEqual([0, 3000, 4100, 6200, 9300, 12_400])
    line.lost = false
    await later_ms(3100)
    expect(screen.getByRole('status').textContent).toMatch(/^\d+ fresh$/)
  })

  test('asks nothing once nobody looks at it', async () => {
    const { line, how } = slowServer(100)
    const { unmount } = render(<List of={name} how={how} every_ms={3000} />)
    await later_ms(200)
    unmount()
    await later_ms(60_000)
    expect(line.asked).toEqual([0])
  })
})

test('what is asked for once is asked for again where no answer came, and at once on a connection', async () => {
  const { line, how } = slowServer(100)
  line.lost = true
  render(<List of={name} how={how} />)
  await later_ms(40_000)
  expect(line.asked).toEqual([0, 1100, 3200, 7300, 15_400, 31_500])
  line.lost = false
  window.dispatchEvent(new Event('online'))
  await later_ms(100)
  expect(screen.getByRole('status').textContent).toBe('40000 fresh')
  await later_ms(120_000)
  expect(line.asked.length).toBe(7)
})

test('on a connection it is not waited for what was asked over the one before', async () => {
  const { line, how } = slowServer(20_000)
  render(<List of={name} how={how} />)
  await later_ms(5000)
  line.takes_ms = 100
  window.dispatchEvent(new Event('online'))
  await later_ms(100)
  expect(shown()).toMatchObject({ value: 5000, state: 'fresh' })
  // The answer from before comes late, and is older than what is shown.
  await later_ms(20_000)
  expect(shown()).toMatchObject({ value: 5000, state: 'fresh' })
})

test('after a change one more asking follows the one under way, however many want it', async () => {
  const { line, how } = slowServer(4000)
  void ask(name, how)
  await later_ms(1000)
  const both = Promise.all([refresh(name, how), refresh(name, how)])
  await later_ms(3000)
  expect(shown()).toMatchObject({ value: 0 })
  await later_ms(4000)
  await both
  expect(shown()).toMatchObject({ value: 4000 })
  expect(line.asked).toEqual([0, 4000])
})

test('an answer asked for before something was put in place is dropped, one asked for after counts', async () => {
  const { how } = slowServer(4000)
  void ask(name, how)
  await later_ms(1000)
  void replace(name, 'put')
  await later_ms(3000)
  expect(shown().value).toBe('put')
  void ask(name, how)
  await later_ms(4000)
  expect(shown().value).toBe(4000)
})

test('a list is as old as its asking, also in the copy on the phone', async () => {
  const { how } = slowServer(8000)
  const begun = Date.now()
  const done = refresh(name, how)
  await later_ms(8000)
  await done
  expect(shown().at).toBe(begun)
  expect((await read('kept', personId(), name))?.at).toBe(begun)
})

test('what another tab was told takes the place of what is older, not of what this tab asked for since', async () => {
  const { how } = slowServer(4000)
  const { write } = await import('@/store/device/database')
  await replace(name, 'old')
  void ask(name, how)
  await later_ms(1000)
  await write('kept', personId(), name, 'of the other tab', Date.now())
  const other = new BroadcastChannel('fourth-canal')
  other.postMessage({ kind: 'kept', person: personId(), name })
  vi.useRealTimers()
  await until(() => expect(shown().value).toBe('of the other tab'))
  other.close()
})

describe('how old a list is', () => {
  test('is said to the second, and is a caution from twenty seconds on', async () => {
    render(<AsOf at={new Date(2026, 2, 5, 10, 42, 5).getTime()} />)
    vi.setSystemTime(new Date(2026, 2, 5, 10, 42, 10))
    cleanup()
    render(<AsOf at={Date.now() - 5000} />)
    expect(screen.getByText('as of 10:42:05')).toBeTruthy()
    await later_ms(14_000)
    expect(screen.queryByRole('status')).toBeNull()
    await later_ms(1100)
    expect(screen.getByRole('status').textContent).toContain('No news since 10:42:05.')
  })

  test('is said of the chairs and of the plans that wait; also that there is no connection', async () => {
    vi.useRealTimers()
    let online = true
    serve(({ path }) => (online ? { body: { results: [], next: null, path } } : 'nothing'))
    render(<Worklist />)
    expect(await screen.findAllByText(/as of \d\d:\d\d:\d\d$/)).toHaveLength(2)
    online = false
    window.dispatchEvent(new Event('online'))
    expect(await screen.findAllByText(/^No connection\. This is what was seen \d\d:\d\d:\d\d\.$/)).toHaveLength(2)
  })
})
