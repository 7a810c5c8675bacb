import type { ImagePurpose } from '@/api/shapes'
import { takeImage } from './images'

// Photos that another app shared with this one. The worker puts them here before any page is open.

const SHARED = 'shared'

/** What was shared and not yet put to a case. */
export async function sharedImages(): Promise<Blob[]> {
  if (!('caches' in globalThis)) return []
  const cache = await caches.open(SHARED)
  const found = await Promise.all((await cache.keys()).map((key) => cache.match(key)))
  return Promise.all(found.flatMap((answer) => (answer ? [answer.blob()] : [])))
}

/** Keeps all that was shared as images of a case; only then it leaves its place. */
export async function putToCase(caseId: string, purpose: ImagePurpose): Promise<void> {
  for (const image of await sharedImages()) await takeImage(caseId, '', purpose, image)
  await leaveShared()
}

export async function leaveShared(): Promise<void> {
  await caches.delete(SHARED)
}
