import type { DBSchema, IDBPDatabase } from 'idb'
import type { EventGiven, Junction, Reading } from '@/api/shapes'

export interface Entry {
  /** Whose it is: another person on the same phone neither sees nor sends it. */
  person: string
  name: string
  value: unknown
  at: number
  /** For which version of the screens it was kept: `CACHE_VERSION`. */
  version?: number
}

/** One event that the server has not acknowledged. It is sealed to the person who recorded it. */
export interface Unsent {
  person: string
  caseId: string
  seq: number
  event: EventGiven
  /** What the server said where it would not take it; nothing after it is sent until it is dealt with. */
  refused?: string
}

/** A reading that was taken with no connection. It is sealed to the person who took it. */
export interface PendingReading {
  person: string
  caseId: string
  seq: number
  /** The server's name of the canal. */
  canal: string
  /** Made when the form was opened: sending twice is harmless. */
  id: string
  reading?: Reading
  junction?: Junction
  refused?: string
}

/** The stores keep the names they were made with, `kept` and `taken`: the last release looks for them by these. */
export interface Local extends DBSchema {
  /** Cached: what was last seen of the server's things. */
  kept: { key: [string, string]; value: Entry }
  /** What was typed and not yet confirmed by the server. */
  drafts: { key: [string, string]; value: Entry }
  /** What belongs to this phone. */
  device: { key: string; value: unknown }
  /** What was done at the chair and has not been acknowledged by the server, in the order it was done. */
  outbox: { key: [string, string, number]; value: Unsent }
  /** Pending readings: they wait for a connection, in the order they were taken. */
  taken: { key: [string, string, number]; value: PendingReading }
}

type Upgrade = (db: IDBPDatabase<Local>) => void

/**
 * What each version of the phone's store added, oldest first. A published step is never changed, and there are no more of
 * them: a server that goes back serves the last release, which opens this very version and no later one. What is new lies in
 * a database of its own.
 */
export const UPGRADES: readonly Upgrade[] = [
  (db) => {
    db.createObjectStore('kept', { keyPath: ['person', 'name'] })
    db.createObjectStore('drafts', { keyPath: ['person', 'name'] })
    db.createObjectStore('device')
  },
  (db) => void db.createObjectStore('outbox', { keyPath: ['person', 'caseId', 'seq'] }),
  (db) => void db.createObjectStore('taken', { keyPath: ['person', 'caseId', 'seq'] }),
]
