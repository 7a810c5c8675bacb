import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { type IDBPDatabase, openDB } from 'idb'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import '@/app/groups/chair'
import '@/app/groups/tooth'
import { App } from '@/app/app'
import { address } from '@/router'
import { database, tab, write } from '@/store/device/database'
import { noticeRead } from '@/store/device/preferences'
import { closeImages, keepImage, waitingOf as waitingImages } from '@/store/images/image-store'
import { closeMarkings, write as keepMarking, waitingOf as waitingMarkings } from '@/store/images/marking-store'
import { unsent, unsentKnown } from '@/store/outbox/outbox'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'
import { type NewEvent, writeEvent } from '@/store/outbox/record'
import { personId } from '@/store/session/session'
import { words } from '@/words/en'
import { signedIn } from './people'
import { serve } from './server'
import { until } from './until'

// A server that goes back serves the last release again. What the present app wrote must open in it, and where that
// fails all the same the older app must say so.

const done = {
  plan_hash: 'h',
  seen_position: 0,
  canal: 'MB',
  node: 'n',
  payload: { kind: 'turn' },
} as unknown as NewEvent

beforeEach(async ({ task }) => {
  await Promise.all([closeImages(), closeMarkings()])
  signedIn(task.name)
  tab.value = 'alone'
  noticeRead.value = true
  serve(() => 'nothing')
})

afterEach(cleanup)

/** How the last release opens its stores, written down as it was released. Never changed after the app's own code. */
const LAST_RELEASE: Record<string, { version: number; stores: readonly string[]; upgrade(db: IDBPDatabase): void }> = {
  'fourth-canal': {
    version: 3,
    stores: ['device', 'drafts', 'kept', 'outbox', 'taken'],
    upgrade(db) {
      db.createObjectStore('kept', { keyPath: ['person', 'name'] })
      db.createObjectStore('drafts', { keyPath: ['person', 'name'] })
      db.createObjectStore('device')
      db.createObjectStore('outbox', { keyPath: ['person', 'caseId', 'seq'] })
      db.createObjectStore('taken', { keyPath: ['person', 'caseId', 'seq'] })
    },
  },
  'fourth-canal-images': {
    version: 1,
    stores: ['bytes', 'waiting'],
    upgrade(db) {
      db.createObjectStore('waiting', { keyPath: 'id' }).createIndex('person', 'person')
      db.createObjectStore('bytes')
    },
  },
  'fourth-canal-markings': {
    version: 1,
    stores: ['waiting'],
    upgrade(db) {
      db.createObjectStore('waiting', { keyPath: 'id' }).createIndex('person', 'person')
    },
  },
}

const openedByLast = (name: keyof typeof LAST_RELEASE) => {
  const { version, upgrade } = LAST_RELEASE[name] as (typeof LAST_RELEASE)[string]
  return openDB(name, version, { upgrade: (db) => upgrade(db) })
}

test('the last release opens what the present app has made, and finds what waits', async () => {
  await writeEvent('c', done)
  await write('drafts', personId(), 'new case', { alias: 'Reed' })
  const facts = { id: 'i', person: personId(), caseId: 'c', canal: '', purpose: 'tooth', type: 'image/jpeg' }
  await keepImage(
    { ...facts, device_time: '', sha256: '', length: 1 } as unknown as Parameters<typeof keepImage>[0],
    new ArrayBuffer(1),
  )
  await keepMarking({ id: 'm', person: personId(), caseId: 'c', imageId: 'i', body: {} } as unknown as Parameters<
    typeof keepMarking
  >[0])
  for (const [name, { stores }] of Object.entries(LAST_RELEASE)) {
    const db = await openedByLast(name)
    expect([...db.objectStoreNames]).toEqual(expect.arrayContaining([...stores]))
    db.close()
  }
  const db = await openedByLast('fourth-canal')
  expect(await db.getAll('outbox')).toMatchObject([{ person: personId(), caseId: 'c', seq: 1, event: { node: 'n' } }])
  expect((await db.get('drafts', [personId(), 'new case'])).value).toEqual({ alias: 'Reed' })
  db.close()
  const images = await openedByLast('fourth-canal-images')
  expect(await images.getAllFromIndex('waiting', 'person', personId())).toHaveLength(1)
  images.close()
  const markings = await openedByLast('fourth-canal-markings')
  expect(await markings.getAllFromIndex('waiting', 'person', personId())).toHaveLength(1)
  markings.close()
})

test('the present app opens what the last release has made, and finds what waits', async () => {
  const db = await openedByLast('fourth-canal')
  await db.put('outbox', { person: personId(), caseId: 'c', seq: 1, event: { node: 'n' } })
  await db.put('taken', { person: personId(), caseId: 'c', seq: 1, canal: 'mb', id: 'r' })
  db.close()
  for (const name of ['fourth-canal-images', 'fourth-canal-markings']) {
    const other = await openedByLast(name)
    await other.put('waiting', { id: 'w', person: personId() })
    other.close()
  }
  expect(await (await database()).getAll('outbox')).toMatchObject([{ event: { node: 'n' } }])
  const readings = pendingReadingsOf('c')
  await until(() => expect(readings.value).toMatchObject([{ canal: 'mb', id: 'r' }]))
  expect([await waitingImages(personId()), await waitingMarkings(personId())]).toMatchObject([
    [{ id: 'w' }],
    [{ id: 'w' }],
  ])
})

/** A newer app has raised the version of the store. */
async function written(): Promise<void> {
  const { upgrade } = LAST_RELEASE['fourth-canal'] as (typeof LAST_RELEASE)[string]
  const db = await openDB('fourth-canal', 99, { upgrade: (made) => upgrade(made) })
  await db.put('outbox', { person: personId(), caseId: 'c', seq: 1, event: { node: 'n' } })
  db.close()
}

const OUTDATED = /^This app is older than what is kept on this phone\./

test('an app that is older than the store says what it is, and shows no work without what waits', async () => {
  await written()
  address.value = '/cases/c/chair'
  render(<App />)
  expect(await screen.findByText(OUTDATED)).toBeTruthy()
  expect(await screen.findByRole('heading', { name: 'No work is shown here' })).toBeTruthy()
  // The list of cases says nothing of work, and is the way to everything that needs no store.
  address.value = '/cases'
  expect(await screen.findByRole('heading', { name: 'Cases' })).toBeTruthy()
  expect(screen.getByText(OUTDATED)).toBeTruthy()
})

test('an app that is older than the store takes an emergency all the same, and sends it', async () => {
  await written()
  const sent: unknown[] = []
  serve(({ method, path, body }) => {
    if (method !== 'POST') return 'nothing'
    sent.push(path, ...(body as { events: { payload: unknown }[] }).events.map(({ payload }) => payload))
    return { body: { position: 1, course: null, canals: [], events: (body as { events: unknown[] }).events } }
  })
  address.value = '/cases/c'
  render(<App />)
  expect(await screen.findByText(OUTDATED)).toBeTruthy()
  fireEvent.click(await screen.findByRole('button', { name: words.chair.problem }))
  fireEvent.click(await screen.findByRole('button', { name: 'Sudden bleeding' }))
  expect((await screen.findByRole('region', { name: 'Emergency' })).textContent).toContain('Sudden bleeding')
  await until(() => expect(sent[0]).toBe('cases/c/events'))
  expect(sent[1]).toMatchObject({ kind: 'emergency', what: 'sudden_bleeding' })
  address.value = '/cases/new'
  expect(await screen.findByRole('heading', { name: 'No work is shown here' })).toBeTruthy()
  expect(screen.queryByRole('button', { name: words.chair.problem })).toBeNull()
})

test('what waits is not taken to be known where it could not be read; it is read as soon as it can be', async () => {
  const open = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('No store here.', 'UnknownError')
  })
  const waiting = unsent('c')
  await until(() => expect(tab.value).toBe('away'))
  await expect(database()).rejects.toThrow('No store here.')
  expect(unsentKnown('c')).toBe(false)
  open.mockRestore()
  const db = await openedByLast('fourth-canal')
  await db.put('outbox', { person: personId(), caseId: 'c', seq: 1, event: { node: 'n' } })
  db.close()
  await until(() => expect(unsentKnown('c')).toBe(true))
  expect(waiting.value).toHaveLength(1)
  expect(tab.value).toBe('alone')
})
