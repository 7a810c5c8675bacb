import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { ImageFacts } from '@/api/images'
import type { RemovalReason } from '@/api/shapes'

// Images lie in a database of their own: neither their size nor a change of their form ever holds up what was done.

/** An image that the server has not stored yet. It is sealed to the person who took it. */
export interface WaitingImage extends ImageFacts {
  readonly person: string
  readonly type: string
  /** What the server said where it would not keep it. */
  readonly refused?: string
  /** Whether somebody looked for a name in it. `open`: not yet, and it is not sent; left out: not asked on this phone. */
  readonly look?: 'open' | 'nobody'
  /** Why it was thrown away here: its bytes are gone, and the server is still to be told. */
  readonly thrown?: RemovalReason
}

interface Images extends DBSchema {
  waiting: { key: string; value: WaitingImage; indexes: { person: string } }
  /** Buffers and not blobs: some browsers lose a blob that is read back after a restart. */
  bytes: { key: string; value: ArrayBuffer }
}

let opened: Promise<IDBPDatabase<Images>> | undefined

function images(): Promise<IDBPDatabase<Images>> {
  opened ??= openDB<Images>('fourth-canal-images', 1, {
    upgrade(db) {
      db.createObjectStore('waiting', { keyPath: 'id' }).createIndex('person', 'person')
      db.createObjectStore('bytes')
    },
    // Another tab has a newer app: it must not wait for this one.
    blocking: () => void closeImages(),
  })
  return opened
}

/** Closes the database; it is opened again when next needed. */
export async function closeImages(): Promise<void> {
  const db = await opened
  db?.close()
  opened = undefined
}

/** Facts and bytes at once, on the disk before anything else happens. */
export async function keepImage(facts: WaitingImage, bytes: ArrayBuffer): Promise<void> {
  const tx = (await images()).transaction(['waiting', 'bytes'], 'readwrite', { durability: 'strict' })
  void tx.objectStore('bytes').put(bytes, facts.id)
  void tx.objectStore('waiting').put(facts)
  await tx.done
}

export async function waitingOf(person: string): Promise<WaitingImage[]> {
  // Ids begin with the time: the order of taking.
  return (await images()).getAllFromIndex('waiting', 'person', person)
}

export async function bytesOf(id: string): Promise<ArrayBuffer | undefined> {
  return (await images()).get('bytes', id)
}

/** Says what became of it; only an image that still waits is written. */
export async function noteRefusal(id: string, refused: string | undefined): Promise<void> {
  const tx = (await images()).transaction('waiting', 'readwrite')
  const image = await tx.store.get(id)
  const { refused: _, ...facts } = image ?? ({} as WaitingImage)
  if (image && image.thrown === undefined) await tx.store.put(refused === undefined ? facts : { ...facts, refused })
  await tx.done
}

/** Says what came of looking for a name. */
export async function noteLook(id: string, look: WaitingImage['look']): Promise<void> {
  const tx = (await images()).transaction('waiting', 'readwrite', { durability: 'strict' })
  const image = await tx.store.get(id)
  const { look: _, ...facts } = image ?? ({} as WaitingImage)
  if (image) await tx.store.put(look === undefined ? facts : { ...facts, look })
  await tx.done
}

type OfBytes = Pick<WaitingImage, 'type' | 'length' | 'sha256'>

/** Other bytes in the place of those of an image that is still held back. */
export async function putInstead(id: string, of: OfBytes, bytes: ArrayBuffer): Promise<void> {
  const tx = (await images()).transaction(['waiting', 'bytes'], 'readwrite', { durability: 'strict' })
  const image = await tx.objectStore('waiting').get(id)
  if (image?.look === 'open' && image.thrown === undefined) {
    void tx.objectStore('waiting').put({ ...image, ...of })
    void tx.objectStore('bytes').put(bytes, id)
  }
  await tx.done
}

/** The bytes go at once, with no connection too; that it was thrown away stays until the server knows. */
export async function throwOut(id: string, thrown: RemovalReason): Promise<void> {
  const tx = (await images()).transaction(['waiting', 'bytes'], 'readwrite', { durability: 'strict' })
  const image = await tx.objectStore('waiting').get(id)
  const { refused: _, ...facts } = image ?? ({} as WaitingImage)
  if (image) void tx.objectStore('waiting').put({ ...facts, thrown })
  void tx.objectStore('bytes').delete(id)
  await tx.done
}

/** What was sent leaves the phone, unless it was thrown away meanwhile: the server is still to be told of that. */
export async function dropSent({ id, thrown }: WaitingImage): Promise<void> {
  const tx = (await images()).transaction(['waiting', 'bytes'], 'readwrite', { durability: 'strict' })
  const now = await tx.objectStore('waiting').get(id)
  if (now?.thrown === thrown) {
    void tx.objectStore('waiting').delete(id)
    void tx.objectStore('bytes').delete(id)
  }
  await tx.done
}

export async function dropImage(id: string): Promise<void> {
  const tx = (await images()).transaction(['waiting', 'bytes'], 'readwrite', { durability: 'strict' })
  void tx.objectStore('waiting').delete(id)
  void tx.objectStore('bytes').delete(id)
  await tx.done
}
