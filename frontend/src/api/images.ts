import { answerTo, http } from './client'
import type { ImagePurpose, ImageShown, ImageStruckWhy, ImagesShown, RemovalReason } from './shapes'

/** An image on its way: what is said of it before its bytes. */
export interface ImageFacts {
  readonly id: string
  readonly caseId: string
  readonly canal: string
  readonly purpose: ImagePurpose
  readonly device_time: string
  /** Of the whole image, in base64. */
  readonly sha256: string
  readonly length: number
}

const IMAGE = { state: 'string' } as const

export const listImages = (case_id: string) =>
  // The client's types lose how many numbers a pair has.
  answerTo(http.GET('/api/v1/cases/{case_id}/images', { params: { path: { case_id } } }), {
    images: 'list',
  }) as Promise<ImagesShown>

export const getImage = (case_id: string, image_id: string) =>
  answerTo(http.GET('/api/v1/cases/{case_id}/images/{image_id}', { params: { path: { case_id, image_id } } }), IMAGE)

/** Sends the bytes from `offset` on; answers with the image, stored once all of it is there. */
export function sendPart(of: ImageFacts, offset: number, bytes: ArrayBuffer): Promise<ImageShown> {
  const { caseId: case_id, id: image_id, canal, purpose, device_time } = of
  return answerTo(
    http.PATCH('/api/v1/cases/{case_id}/images/{image_id}', {
      params: {
        path: { case_id, image_id },
        query: { canal, purpose, device_time },
        header: { 'Repr-Digest': `sha-256=:${of.sha256}:`, 'Upload-Offset': offset, 'Upload-Length': of.length },
      },
      headers: { 'Content-Type': 'application/partial-upload' },
      // The description has no type for bytes.
      body: bytes as unknown as string,
      bodySerializer: (body) => body,
    }),
    { ...IMAGE, received_bytes: 'number' },
  ) as Promise<ImageShown>
}

/** Somebody looked: nobody is named in the picture. */
export const checkNames = (case_id: string, image_id: string) =>
  answerTo(
    http.POST('/api/v1/cases/{case_id}/images/{image_id}/name-check', { params: { path: { case_id, image_id } } }),
    IMAGE,
  )

export const removeImage = (case_id: string, image_id: string, reason: RemovalReason) =>
  answerTo(
    http.POST('/api/v1/cases/{case_id}/images/{image_id}/remove', {
      params: { path: { case_id, image_id } },
      body: { reason },
    }),
    IMAGE,
  )

export const strikeImage = (case_id: string, image_id: string, why: ImageStruckWhy) =>
  answerTo(
    http.POST('/api/v1/cases/{case_id}/images/{image_id}/strike', {
      params: { path: { case_id, image_id } },
      body: { why },
    }),
    IMAGE,
  )

/** Puts it to a canal; empty: to the whole tooth. */
export const moveImage = (case_id: string, image_id: string, canal: string) =>
  answerTo(
    http.POST('/api/v1/cases/{case_id}/images/{image_id}/move', {
      params: { path: { case_id, image_id } },
      body: { canal },
    }),
    IMAGE,
  )

/** Asks past the browser's own copies of an image that was removed, whereby they go. */
export const forgetCopies = (case_id: string, image_id: string) => {
  const past = { params: { path: { case_id, image_id } }, cache: 'reload', parseAs: 'stream' } as const
  return Promise.allSettled([
    http.GET('/api/v1/cases/{case_id}/images/{image_id}/content', past),
    http.GET('/api/v1/cases/{case_id}/images/{image_id}/thumbnail', past),
  ])
}

/** Where the browser gets an image of the server's. */
export const imageAddress = (caseId: string, id: string, part: 'content' | 'thumbnail') =>
  `/api/v1/cases/${caseId}/images/${id}/${part}`
