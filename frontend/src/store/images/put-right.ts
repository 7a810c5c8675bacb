import * as calls from '@/api/images'
import type { ImageStruckWhy, RemovalReason } from '@/api/shapes'
import { refreshCase } from '@/store/cache/cases'
import { refreshTreatment } from '@/store/chair/chair'
import { dropImage } from './image-store'
import { refreshImages, reloadImages } from './images'

// What the server is told of an image that it has. All of it needs the connection.

/** Removes an image from the server, for everyone, and what is left of it on this phone. It needs the connection. */
export async function removeImage(caseId: string, id: string, reason: RemovalReason): Promise<void> {
  await calls.removeImage(caseId, id, reason)
  await dropImage(id)
  await reloadImages()
  await calls.forgetCopies(caseId, id)
  await refreshImages(caseId)
}

/** Tells the server that somebody looked and nobody is named in the picture. It needs the connection. */
export async function checkNames(caseId: string, id: string): Promise<void> {
  await calls.checkNames(caseId, id)
  await refreshImages(caseId)
}

/** Strikes an image. It needs the connection: what rested on it is worked out on the server. */
export async function strikeImage(caseId: string, id: string, why: ImageStruckWhy): Promise<void> {
  await calls.strikeImage(caseId, id, why)
  await refreshPutRight(caseId)
}

/** Puts an image to the canal that it is of; empty: to the whole tooth. It needs the connection. */
export async function moveImage(caseId: string, id: string, canal: string): Promise<void> {
  await calls.moveImage(caseId, id, canal)
  await refreshPutRight(caseId)
}

const refreshPutRight = (caseId: string) =>
  Promise.all([refreshImages(caseId), refreshCase(caseId), refreshTreatment(caseId)])
