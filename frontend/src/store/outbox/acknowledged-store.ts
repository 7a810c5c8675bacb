import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { EventGiven } from '@/api/shapes'

/** An entry that the server has acknowledged, as it was sent. */
export interface Sent {
  readonly id: string
  readonly person: string
  readonly caseId: string
  readonly device: string
  readonly event: EventGiven
  /** When it was acknowledged, by this phone's clock. */
  readonly at: number
}

interface SentEntries extends DBSchema {
  sent: { key: string; value: Sent; indexes: { case: [string, string] } }
}

const DAY_MS = 86_400_000
const KEPT_DAYS = 14 // a server is brought back from a copy of the last days; a visit weighs some hundred bytes an entry

// A database of its own, beside what waits: a server that is brought back from a copy has lost what came after it.

let opened: Promise<IDBPDatabase<SentEntries>> | undefined

function database(): Promise<IDBPDatabase<SentEntries>> {
  opened ??= openDB<SentEntries>('fourth-canal-sent', 1, {
    upgrade(made) {
      made.createObjectStore('sent', { keyPath: 'id' }).createIndex('case', ['person', 'caseId'])
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
export async function closeSentStore(): Promise<void> {
  const closing = opened
  opened = undefined
  const db = await closing?.catch(() => undefined)
  db?.close()
}

/** Keeps what was acknowledged. A full store may not take it: that matters only if the server is restored from a copy. */
export async function keepSent(entries: readonly Sent[]): Promise<void> {
  try {
    const tx = (await database()).transaction('sent', 'readwrite')
    await Promise.all([...entries.map((entry) => tx.store.put(entry)), tx.done])
  } catch {
    // Said above.
  }
}

/** What was acknowledged of a case in the last days, in the order of doing. */
export async function sentOf(person: string, caseId: string): Promise<readonly Sent[]> {
  return inOrder(await (await database()).getAllFromIndex('sent', 'case', [person, caseId]))
}

/** Ids are in the order of time, but for those of one millisecond: within a device its numbers say the order. */
function inOrder(sent: readonly Sent[]): readonly Sent[] {
  const byDevice = new Map<string, Sent[]>()
  for (const entry of sent) byDevice.set(entry.device, [...(byDevice.get(entry.device) ?? []), entry])
  for (const of of byDevice.values()) of.sort((a, b) => a.event.device_seq - b.event.device_seq)
  return sent.flatMap((entry) => byDevice.get(entry.device)?.shift() ?? [])
}

/** The cases of a person of which something was acknowledged in the last days; what is older is taken out. */
export async function casesSent(person: string, now = Date.now()): Promise<readonly string[]> {
  const db = await database()
  const every = await db.getAll('sent')
  const old = every.filter((entry) => now - entry.at > KEPT_DAYS * DAY_MS)
  for (const { id } of old) await db.delete('sent', id)
  return [...new Set(every.flatMap((entry) => (entry.person === person && !old.includes(entry) ? [entry.caseId] : [])))]
}
