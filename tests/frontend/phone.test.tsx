import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import * as calls from '@/api/calls'
import { PhoneSays } from '@/screens/chair/phone-says'
import { clockAhead_ms } from '@/store/device/clock'
import { closeDatabase, database } from '@/store/device/database'
import { lookAtSpace, spaceLeft_bytes, startSpace } from '@/store/device/storage'
import { type NewEvent, notRecorded, recordEvent } from '@/store/outbox/record'
import { span } from '@/words/phone'
import { signedIn } from './people'
import { serve } from './server'

const done = { plan_hash: 'h', seen_position: 0, canal: 'MB', node: 'n', payload: {} } as unknown as NewEvent
const waiting = async () => (await (await database()).getAll('outbox')).map((entry) => entry.event.node)

beforeEach(() => {
  signedIn('Priya')
  serve(() => 'nothing')
  notRecorded.value = undefined
  spaceLeft_bytes.value = undefined
  clockAhead_ms.value = 0
})

afterEach(cleanup)

/** As a browser refuses a write when the disk is full (Indexed Database API 3.0, 5.4: the commit fails). */
function full(): void {
  vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore) {
    throw new DOMException('The disk is full.', 'QuotaExceededError')
  })
}

test('an answer that a full phone cannot write is not taken for recorded; what was written stays', async () => {
  expect(await recordEvent('c', done)).toBe(true)
  full()
  expect(await recordEvent('c', { ...done, node: 'lost' })).toBe(false)
  render(<PhoneSays caseId="c" />)
  expect(screen.getByRole('alert').textContent).toContain('NOT RECORDED: this phone’s storage is full.')
  expect(await waiting()).toEqual(['n'])
  vi.restoreAllMocks()
  fireEvent.click(screen.getByRole('button', { name: 'Record again' }))
  await waitFor(() => expect(screen.queryByRole('alert')).toBeNull())
  expect(await waiting()).toEqual(['n', 'lost'])
})

test('the count does not run ahead of what could not be written', async () => {
  full()
  await recordEvent('c', done)
  vi.restoreAllMocks()
  await recordEvent('c', done)
  expect((await (await database()).getAll('outbox')).map((entry) => entry.seq)).toEqual([1])
})

test('a store that cannot be opened is said too', async () => {
  await closeDatabase()
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('No store here.', 'UnknownError')
  })
  expect(await recordEvent('c', done)).toBe(false)
  render(<PhoneSays caseId="c" />)
  expect(screen.getByRole('alert').textContent).toContain('could not write it down')
})

function storage(quota: number, usage: number) {
  const persist = vi.fn(async () => true)
  Object.defineProperty(navigator, 'storage', {
    configurable: true,
    value: { estimate: async () => ({ quota, usage }), persist },
  })
  return persist
}

test('a phone that is almost full says so while there is still room', async () => {
  storage(1_000_000_000, 988_000_000)
  await lookAtSpace()
  render(<PhoneSays caseId="c" />)
  expect(screen.getByRole('status').textContent).toContain('12 MB are left')
})

test('with room enough nothing is said, and the browser is asked to keep the store', async () => {
  const persist = storage(1_000_000_000, 10_000_000)
  startSpace()
  await lookAtSpace()
  const { container } = render(<PhoneSays caseId="c" />)
  expect(container.textContent).toBe('')
  expect(persist).toHaveBeenCalled()
})

function answeredAt(date: Date): void {
  const headers = { 'Content-Type': 'application/json', Date: date.toUTCString() }
  vi.stubGlobal('fetch', async () => new Response('{"id":"c","revision":1,"canals":[]}', { headers }))
}

test.each([
  ['2020-03-05T14:20:00Z', 'ahead of'],
  ['2040-03-05T14:20:00Z', 'behind'],
])('with the server at %s this phone’s clock is said to be years off', async (date, says) => {
  answeredAt(new Date(date))
  await calls.getCase('c')
  render(<PhoneSays caseId="c" />)
  expect(screen.getByRole('status').textContent).toMatch(new RegExp(`\\d+ years ${says} the server’s`))
})

test('a clock that is a minute off is not worth a word', async () => {
  answeredAt(new Date(Date.now() - 60_000))
  await calls.getCase('c')
  expect(clockAhead_ms.value).toBe(0)
})

test.each([
  [4 * 60_000, '4 min'],
  [3 * 3_600_000, '3 h'],
  [3 * 86_400_000, '3 days'],
  [5 * 365 * 86_400_000, '5 years'],
])('%i ms are %s', (ms, says) => {
  expect(span(ms)).toBe(says)
})
