import { beforeEach, describe, expect, test, vi } from 'vitest'
import { signedIn } from './people'

const PLACE = ['c1', 'MB', 'edta']
const OTHER = ['c1', 'DB', 'edta']
const NOON = Date.parse('2026-03-05T12:00:00Z')

/** The store as after the app was closed and opened again. */
async function opened() {
  vi.resetModules()
  const people = await import('./people')
  people.signedIn('ines')
  return import('@/store/contact-time')
}

describe('how long an irrigant has been in', () => {
  beforeEach(() => {
    localStorage.clear()
    signedIn('ines')
  })

  test('nothing is counted before it is started', async () => {
    const times = await opened()
    expect(times.contact_s(PLACE, NOON)).toBeUndefined()
  })

  test('it goes on while the app is closed, for each canal by itself', async () => {
    const before = await opened()
    before.startContact(PLACE, NOON)
    before.startContact(OTHER, NOON + 20_000)
    const after = await opened()
    expect(after.contact_s(PLACE, NOON + 61_400)).toBe(61)
    expect(after.contact_s(OTHER, NOON + 61_400)).toBe(41)
    after.endContact(PLACE)
    expect(after.contact_s(PLACE, NOON + 62_000)).toBeUndefined()
    expect(after.contact_s(OTHER, NOON + 62_000)).toBe(42)
  })

  test('a clock that was set back counts nothing rather than less than nothing', async () => {
    const times = await opened()
    times.startContact(PLACE, NOON)
    expect(times.contact_s(PLACE, NOON - 5000)).toBe(0)
  })

  test('another person on this phone has times of their own', async () => {
    const times = await opened()
    times.startContact(PLACE, NOON)
    const people = await import('./people')
    people.signedIn('joon')
    expect(times.contact_s(PLACE, NOON + 1000)).toBeUndefined()
  })

  test('what is kept and cannot be read is as nothing kept', async () => {
    localStorage.setItem('fourth-canal-contact-times', '{')
    const times = await opened()
    expect(times.contact_s(PLACE, NOON)).toBeUndefined()
  })
})
