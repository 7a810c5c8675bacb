import { computed, signal } from '@preact/signals'
import { type IDBPDatabase, openDB } from 'idb'
import { type Entry, type Local, UPGRADES } from './schema'

/** Raised when screens come to need what earlier answers did not have: an older copy is then no copy. */
const CACHE_VERSION = 8

/**
 * How this tab stands to the phone's store: `older` where a newer app in another tab has taken it, `waits` where this is
 * the newer one and another tab still holds it, `outdated` where the server went back to this app and a newer one has
 * written the store, `away` where the browser cannot open it for another reason.
 */
export const tab = signal<'alone' | 'older' | 'waits' | 'outdated' | 'away'>('alone')

/** What waits to be sent cannot be read by this app: work that is shown would lack it. */
export const cannotRead = computed(() => tab.value === 'older' || tab.value === 'outdated')

let opened: Promise<IDBPDatabase<Local>> | undefined

export function database(): Promise<IDBPDatabase<Local>> {
  opened ??= open().catch((error) => {
    opened = undefined
    const newer = error instanceof DOMException && error.name === 'VersionError'
    if (!cannotRead.peek()) tab.value = newer ? 'outdated' : 'away'
    throw error
  })
  return opened
}

async function open(): Promise<IDBPDatabase<Local>> {
  const db = await openDB<Local>('fourth-canal', UPGRADES.length, {
    upgrade(upgraded, from) {
      for (const upgrade of UPGRADES.slice(from)) upgrade(upgraded)
    },
    blocked: () => {
      tab.value = 'waits'
    },
    // Another tab has a newer app: it must not wait for this one.
    blocking: () => {
      tab.value = 'older'
      void closeDatabase()
    },
    // The browser has closed the store, short of memory: it is opened again when next needed.
    terminated: () => {
      opened = undefined
    },
  })
  if (!cannotRead.peek()) tab.value = 'alone'
  return db
}

/** Closes the database; it is opened again when next needed. */
export async function closeDatabase(): Promise<void> {
  const closing = opened
  opened = undefined
  const db = await closing?.catch(() => undefined)
  db?.close()
}

type Shelf = 'kept' | 'drafts'

export async function read(shelf: Shelf, person: string, name: string): Promise<Entry | undefined> {
  const row = await (await database()).get(shelf, [person, name])
  return shelf === 'kept' && row?.version !== CACHE_VERSION ? undefined : row
}

export async function write(shelf: Shelf, person: string, name: string, value: unknown, at?: number): Promise<void> {
  // A copy of the server's things can be asked for again; what was typed cannot.
  const durability = shelf === 'kept' ? 'relaxed' : 'strict'
  const tx = (await database()).transaction(shelf, 'readwrite', { durability })
  await Promise.all([tx.store.put(entry(person, name, value, at)), tx.done])
}

export const entry = (person: string, name: string, value: unknown, at = Date.now()): Entry => ({
  person,
  name,
  value,
  at,
  version: CACHE_VERSION,
})

export async function remove(shelf: Shelf, person: string, name: string): Promise<void> {
  await (await database()).delete(shelf, [person, name])
}

/** Takes away the copies of the server's things that a person has here; what they typed stays. */
export async function forgetCached(person: string): Promise<void> {
  await (await database()).delete('kept', IDBKeyRange.bound([person, ''], [person, '\uffff']))
}

export async function readDevice<T>(name: string): Promise<T | undefined> {
  return (await (await database()).get('device', name)) as T | undefined
}

export async function writeDevice(name: string, value: unknown): Promise<void> {
  const db = await database()
  if (value === undefined) await db.delete('device', name)
  else await db.put('device', value, name)
}
