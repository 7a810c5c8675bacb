import { openDB } from 'idb'
import { beforeEach, expect, test } from 'vitest'
import type { EventGiven } from '@/api/shapes'
import { closeDatabase, database, tab } from '@/store/device/database'
import { UPGRADES } from '@/store/device/schema'
import { writeEvent } from '@/store/outbox/record'
import { send } from '@/store/outbox/sender'
import { signedIn } from './people'
import { serve } from './server'
import { until } from './until'

// Older stores are written here as the browsers have them, not by the app's own steps: a published version never changes.

const NAME = 'fourth-canal'
const published = UPGRADES.length

beforeEach(() => {
  signedIn('Priya')
  tab.value = 'alone'
})

/** A store of version 2 with two entries of Priya's that wait. */
async function formTwo(): Promise<void> {
  const db = await openDB(NAME, 2, {
    upgrade(made) {
      made.createObjectStore('kept', { keyPath: ['person', 'name'] })
      made.createObjectStore('drafts', { keyPath: ['person', 'name'] })
      made.createObjectStore('device')
      made.createObjectStore('outbox', { keyPath: ['person', 'caseId', 'seq'] })
    },
  })
  for (const seq of [1, 2]) {
    const event = { id: `e${seq}`, device_seq: seq, node: `n${seq}` }
    await db.put('outbox', { person: 'id of Priya', caseId: 'c', seq, event })
  }
  await db.put('device', 2, 'events of id of Priya in c')
  await db.put('device', 'phone-7', 'device of id of Priya')
  await db.put('drafts', { person: 'id of Priya', name: 'new case', value: { alias: 'Reed' }, at: 1 })
  db.close()
}

test('a store of version 1 gets what came since, and keeps what was typed', async () => {
  const old = await openDB(NAME, 1, {
    upgrade(made) {
      made.createObjectStore('kept', { keyPath: ['person', 'name'] })
      made.createObjectStore('drafts', { keyPath: ['person', 'name'] })
      made.createObjectStore('device')
    },
  })
  await old.put('drafts', { person: 'p', name: 'new case', value: { alias: 'Reed' }, at: 1 })
  old.close()
  const db = await database()
  expect([...db.objectStoreNames]).toContain('outbox')
  expect((await db.get('drafts', ['p', 'new case']))?.value).toEqual({ alias: 'Reed' })
})

test('what waits in a store of version 2 is sent by the app of today, in its order, and the count goes on', async () => {
  await formTwo()
  const seen = serve(({ body }) => ({ body: { position: 2, course: null, canals: [], events: eventsIn(body) } }))
  await send()
  expect(seen.map(({ body }) => body)).toMatchObject([
    { device_id: 'phone-7', events: [{ node: 'n1' }, { node: 'n2' }] },
  ])
  await writeEvent('c', { node: 'n3' } as unknown as Parameters<typeof writeEvent>[1])
  await until(() => expect(eventsIn(seen.at(-1)?.body)).toMatchObject([{ node: 'n3', device_seq: 3 }]))
})

test('an old tab lets a newer app take the store, and says that it must be reloaded', async () => {
  await database()
  const newer = await openDB(NAME, published + 1, { upgrade: () => undefined })
  expect(tab.value).toBe('older')
  newer.close()
  // From here on nothing is written under the newer app's feet: it fails where the writer can say so.
  await expect(database()).rejects.toThrow()
  expect(tab.value).toBe('older')
})

test('a newer app waits for an older one that holds the store, says so, and goes on', async () => {
  const holding = await openDB(NAME, 1, {
    upgrade(made) {
      made.createObjectStore('kept', { keyPath: ['person', 'name'] })
      made.createObjectStore('drafts', { keyPath: ['person', 'name'] })
      made.createObjectStore('device')
    },
  })
  const opening = database()
  await until(() => expect(tab.value).toBe('waits'))
  holding.close()
  await opening
  expect(tab.value).toBe('alone')
})

test('a store that the browser has closed is opened again', async () => {
  await closeDatabase()
  expect((await database()).version).toBe(published)
})

const eventsIn = (body: unknown) => (body as { events: EventGiven[] }).events
