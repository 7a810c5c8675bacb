import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { EventGiven, Plan } from '@/api/shapes'

/** What an emergency needs of a case before the case itself is on the screen. */
export interface Ready {
  readonly person: string
  readonly caseId: string
  readonly planHash: string
  readonly position: number
  readonly advice: NonNullable<Plan['at_the_chair']>['advice']
}

/** An emergency, or what is said of one later; sealed to the person who told it. */
export interface UnsentEmergency {
  readonly id: string
  readonly person: string
  readonly caseId: string
  readonly event: EventGiven
}

interface Emergencies extends DBSchema {
  emergencies: { key: string; value: UnsentEmergency }
  ready: { key: [string, string]; value: Ready }
}

// A database of its own: a newer app, a full or a broken store of everything else must not stand before an emergency.
// Its form never changes.

let opened: Promise<IDBPDatabase<Emergencies>> | undefined

function database(): Promise<IDBPDatabase<Emergencies>> {
  opened ??= openDB<Emergencies>('fourth-canal-emergencies', 1, {
    upgrade(made) {
      made.createObjectStore('emergencies', { keyPath: 'id' })
      made.createObjectStore('ready', { keyPath: ['person', 'caseId'] })
    },
    terminated: () => {
      opened = undefined
    },
  }).catch((error) => {
    opened = undefined
    throw error
  })
  return opened
}

/** Closes the database; it is opened again when next needed. */
export async function closeEmergencyStore(): Promise<void> {
  const closing = opened
  opened = undefined
  const db = await closing?.catch(() => undefined)
  db?.close()
}

export async function writeEmergency(entry: UnsentEmergency): Promise<void> {
  const tx = (await database()).transaction('emergencies', 'readwrite', { durability: 'strict' })
  await Promise.all([tx.store.put(entry), tx.done])
}

/** In the order they were told: ids are made in the order of time (RFC 9562, version 7). */
export const readEmergencies = async (): Promise<readonly UnsentEmergency[]> => (await database()).getAll('emergencies')

export const removeEmergency = async (id: string): Promise<void> => (await database()).delete('emergencies', id)

export const writeReady = async (ready: Ready): Promise<void> => void (await (await database()).put('ready', ready))

export const readReady = async (person: string, caseId: string): Promise<Ready | undefined> =>
  (await database()).get('ready', [person, caseId])
