import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

interface Entry {
  /** Whose it is: another person on the same phone neither sees nor sends it. */
  person: string
  name: string
  value: unknown
  at: number
}

interface Local extends DBSchema {
  /** What was last seen of the server's things. */
  kept: { key: [string, string]; value: Entry }
  /** What was typed and not yet confirmed by the server. */
  drafts: { key: [string, string]; value: Entry }
  /** What belongs to this phone. */
  device: { key: string; value: unknown }
}

let opened: Promise<IDBPDatabase<Local>> | undefined

export function database(): Promise<IDBPDatabase<Local>> {
  opened ??= openDB<Local>('fourth-canal', 1, {
    upgrade(db) {
      db.createObjectStore('kept', { keyPath: ['person', 'name'] })
      db.createObjectStore('drafts', { keyPath: ['person', 'name'] })
      db.createObjectStore('device')
    },
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
  return (await database()).get(shelf, [person, name])
}

export async function write(shelf: Shelf, person: string, name: string, value: unknown): Promise<void> {
  const tx = (await database()).transaction(shelf, 'readwrite', { durability: 'strict' })
  await tx.store.put({ person, name, value, at: Date.now() })
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
