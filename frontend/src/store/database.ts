import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { EventGiven } from '@/api/shapes'

interface Entry {
  /** Whose it is: another person on the same phone neither sees nor sends it. */
  person: string
  name: string
  value: unknown
  at: number
  /** In which form of the server's answers it was kept. */
  form?: number
}

/** Raised when screens come to need what earlier answers did not have: an older copy is then no copy. */
const FORM = 2

/** One event that the server has not acknowledged. It is sealed to the person who recorded it. */
export interface Unsent {
  person: string
  caseId: string
  seq: number
  event: EventGiven
  /** What the server said where it would not take it; nothing after it is sent until it is dealt with. */
  refused?: string
}

interface Local extends DBSchema {
  /** What was last seen of the server's things. */
  kept: { key: [string, string]; value: Entry }
  /** What was typed and not yet confirmed by the server. */
  drafts: { key: [string, string]; value: Entry }
  /** What belongs to this phone. */
  device: { key: string; value: unknown }
  /** What was done at the chair and has not been acknowledged by the server, in the order it was done. */
  outbox: { key: [string, string, number]; value: Unsent }
}

let opened: Promise<IDBPDatabase<Local>> | undefined

export function database(): Promise<IDBPDatabase<Local>> {
  opened ??= openDB<Local>('fourth-canal', 2, {
    upgrade(db, from) {
      if (from < 1) {
        db.createObjectStore('kept', { keyPath: ['person', 'name'] })
        db.createObjectStore('drafts', { keyPath: ['person', 'name'] })
        db.createObjectStore('device')
      }
      db.createObjectStore('outbox', { keyPath: ['person', 'caseId', 'seq'] })
    },
    // Another tab has a newer app: it must not wait for this one.
    blocking: () => void closeDatabase(),
  })
  return opened
}

/** Closes the database; for tests that begin with an empty one. */
export async function closeDatabase(): Promise<void> {
  const db = await opened
  db?.close()
  opened = undefined
}

export type Shelf = 'kept' | 'drafts'

export async function read(shelf: Shelf, person: string, name: string): Promise<Entry | undefined> {
  const entry = await (await database()).get(shelf, [person, name])
  return shelf === 'kept' && entry?.form !== FORM ? undefined : entry
}

export async function write(shelf: Shelf, person: string, name: string, value: unknown): Promise<void> {
  const tx = (await database()).transaction(shelf, 'readwrite', { durability: 'strict' })
  await tx.store.put({ person, name, value, at: Date.now(), form: FORM })
  await tx.done
}

export async function remove(shelf: Shelf, person: string, name: string): Promise<void> {
  await (await database()).delete(shelf, [person, name])
}

/** Takes away what was kept of the server's things for a person; what they typed stays. */
export async function forgetKept(person: string): Promise<void> {
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
