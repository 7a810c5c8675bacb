import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { NewMarking } from '@/api/shapes'

// Markings lie in a database of their own, as images do: a change of their form never holds up what was done.

/** Marks that the server has not taken yet. They are sealed to the person who made them. */
export interface WaitingMarking {
  readonly id: string
  readonly person: string
  readonly caseId: string
  readonly imageId: string
  readonly body: NewMarking
  /** What the server said where it would not take them. */
  readonly refused?: string
}

interface Markings extends DBSchema {
  waiting: { key: string; value: WaitingMarking; indexes: { person: string } }
}

let opened: Promise<IDBPDatabase<Markings>> | undefined

function markings(): Promise<IDBPDatabase<Markings>> {
  opened ??= openDB<Markings>('fourth-canal-markings', 1, {
    upgrade(db) {
      db.createObjectStore('waiting', { keyPath: 'id' }).createIndex('person', 'person')
    },
    // Another tab has a newer app: it must not wait for this one.
    blocking: () => void closeMarkings(),
  })
  return opened
}

/** Closes the database; it is opened again when next needed. */
export async function closeMarkings(): Promise<void> {
  const db = await opened
  db?.close()
  opened = undefined
}

export async function write(marking: WaitingMarking): Promise<void> {
  const tx = (await markings()).transaction('waiting', 'readwrite', { durability: 'strict' })
  void tx.store.put(marking)
  await tx.done
}

/** Those of a person, in the order they were made: their ids begin with the time. */
export async function waitingOf(person: string): Promise<WaitingMarking[]> {
  return (await markings()).getAllFromIndex('waiting', 'person', person)
}

export async function drop(id: string): Promise<void> {
  await (await markings()).delete('waiting', id)
}
