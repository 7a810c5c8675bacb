import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { signedIn } from './people'

const PLACE = ['c1', 'MB', 'edta']
const OTHER = ['c1', 'DB', 'edta']
const NOON = Date.parse('2026-03-05T12:00:00Z')

/** The phone's clock, which can be set, and the page's own, which cannot. */
let clock_ms = NOON
let steady_ms = 0

function pass(ms: number): void {
  clock_ms += ms
  steady_ms += ms
}

/** The store as after the app was closed and opened again: the page's own clock begins anew. */
async function opened() {
  steady_ms = 100
  vi.resetModules()
  const people = await import('./people')
  people.signedIn('ines')
  return import('@/store/chair/contact-time')
}

describe('how long an irrigant has been in', () => {
  beforeEach(() => {
    localStorage.clear()
    signedIn('ines')
    clock_ms = NOON
    vi.spyOn(Date, 'now').mockImplementation(() => clock_ms)
    vi.spyOn(performance, 'now').mockImplementation(() => steady_ms)
  })

  afterEach(() => {
    vi.restoreAllMocks()
    localStorage.clear()
  })

  test('nothing is counted before it is started', async () => {
    const times = await opened()
    expect(times.contact_s(PLACE)).toBeUndefined()
  })

  test('each canal by itself, until it is ended', async () => {
    const times = await opened()
    times.startContact(PLACE)
    pass(20_000)
    times.startContact(OTHER)
    pass(41_400)
    expect([times.contact_s(PLACE), times.contact_s(OTHER)]).toEqual([61, 41])
    times.endContact(PLACE)
    pass(600)
    expect([times.contact_s(PLACE), times.contact_s(OTHER)]).toEqual([undefined, 42])
  })

  test.each([
    ['forward', 3_600_000],
    ['back', -3_600_000],
    ['forward by half a minute', 30_000],
    ['back by half a minute', -30_000],
  ])('a clock that was set %s tells no time rather than a wrong one', async (_, by) => {
    const times = await opened()
    times.startContact(PLACE)
    pass(40_000)
    clock_ms += by
    pass(5000)
    expect(times.contact_s(PLACE)).toBeNull()
    // Set right again it is known again: the page's own clock had gone on.
    clock_ms -= by
    expect(times.contact_s(PLACE)).toBe(45)
  })

  test('a phone that slept, and its page’s clock with it, tells no time', async () => {
    const times = await opened()
    times.startContact(PLACE)
    clock_ms += 60_000
    expect(times.contact_s(PLACE)).toBeNull()
  })

  test('over a reload it goes on', async () => {
    const before = await opened()
    before.startContact(PLACE)
    pass(60_000)
    expect(before.contact_s(PLACE)).toBe(60)
    clock_ms += 3000
    const after = await opened()
    pass(7000)
    expect(after.contact_s(PLACE)).toBe(70)
  })

  test.each([
    ['longer than a reload', 60_000],
    ['over a clock that was set back', -60_000],
  ])('closed %s it is not known', async (_, gap) => {
    const before = await opened()
    before.startContact(PLACE)
    pass(60_000)
    before.contact_s(PLACE)
    clock_ms += gap
    const after = await opened()
    pass(7000)
    expect(after.contact_s(PLACE)).toBeNull()
    after.endContact(PLACE)
    expect(after.contact_s(PLACE)).toBeUndefined()
  })

  test('what was not known before a reload is not known after it', async () => {
    const before = await opened()
    before.startContact(PLACE)
    clock_ms += 60_000
    expect(before.contact_s(PLACE)).toBeNull()
    const after = await opened()
    expect(after.contact_s(PLACE)).toBeNull()
  })

  test('another person on this phone has times of their own', async () => {
    const times = await opened()
    times.startContact(PLACE)
    const people = await import('./people')
    people.signedIn('joon')
    expect(times.contact_s(PLACE)).toBeUndefined()
  })

  test.each([
    ['cannot be read', '{', undefined],
    ['an earlier app kept', JSON.stringify({ [JSON.stringify(['id of ines', ...PLACE])]: NOON }), null],
  ])('what %s is no time', async (_, kept, expected) => {
    localStorage.setItem('fourth-canal-contact-times', kept)
    const times = await opened()
    expect(times.contact_s(PLACE)).toBe(expected)
  })
})
