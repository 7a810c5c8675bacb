import type { ImagePurpose } from '@/api/shapes'
import { uuid7 } from '@/store/device/uuid7'
import { personId } from '@/store/session/session'
import { drawable } from './blackened'
import { keepImage } from './image-store'
import { reloadImages, sendImages } from './images'

// Any other kind the browser may not draw: it is looked at once the server has it.
const LOOKED_AT_HERE = ['image/jpeg', 'image/png', 'image/webp']

/** Keeps an image on the phone, for good, before anything else; returns its id. It is sent once somebody has looked. */
export async function takeImage(caseId: string, canal: string, purpose: ImagePurpose, picked: Blob): Promise<string> {
  const person = personId()
  const file = await drawable(picked)
  const bytes = await file.arrayBuffer()
  const sha256 = await digestOf(bytes)
  const device_time = new Date().toISOString()
  const facts = { id: uuid7(), caseId, canal, purpose, device_time, sha256, length: bytes.byteLength }
  const look = LOOKED_AT_HERE.includes(file.type) ? ({ look: 'open' } as const) : {}
  await keepImage({ ...facts, person, type: file.type, ...look }, bytes)
  await reloadImages()
  void sendImages()
  return facts.id
}

/** SHA-256, in base64. */
export async function digestOf(bytes: ArrayBuffer): Promise<string> {
  return btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))))
}

// Photos that another app shared with this one. The worker puts them here before any page is open.

const SHARED = 'shared'

/** What was shared and not yet put to a case. */
export async function sharedImages(): Promise<Blob[]> {
  if (!('caches' in globalThis)) return []
  const cache = await caches.open(SHARED)
  const answers = await Promise.all((await cache.keys()).map((key) => cache.match(key)))
  return Promise.all(answers.flatMap((answer) => (answer ? [answer.blob()] : [])))
}

/** Keeps all that was shared as images of a case; only then it leaves its place. */
export async function putToCase(caseId: string, purpose: ImagePurpose): Promise<void> {
  for (const image of await sharedImages()) await takeImage(caseId, '', purpose, image)
  await leaveShared()
}

export async function leaveShared(): Promise<void> {
  await caches.delete(SHARED)
}
