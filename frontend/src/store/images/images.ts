import { effect } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import * as calls from '@/api/images'
import { Refused, Unreachable } from '@/api/problem'
import type { ImagePurpose, ImageShown, ImageStruckWhy, ImagesShown, RemovalReason } from '@/api/shapes'
import { refresh } from '@/store/cache/cached'
import { refreshCase } from '@/store/cache/cases'
import { useCached } from '@/store/cache/hooks'
import { refreshTreatment } from '@/store/chair/chair'
import { retrying, whenLookedAt } from '@/store/device/retry'
import { uuid7 } from '@/store/device/uuid7'
import { perPerson } from '@/store/session/per-person'
import { personId, signIns } from '@/store/session/session'
import { drawable } from './blackened'
import {
  bytesOf,
  dropImage,
  dropSent,
  keepImage,
  noteRefusal,
  throwOut,
  type WaitingImage,
  waitingOf,
} from './image-store'

// An image is written first, shown at once, and sent in parts until the server has stored it. What is told of it at the
// chair never waits for it.

export { imageAddress } from '@/api/images'
export type { WaitingImage } from './image-store'

const PART_BYTES = 512_000 // what a thin line carries before a phone gives up on the answer

const imagesName = (caseId: string) => `images of ${caseId}`

const refreshImages = (caseId: string) => refresh(imagesName(caseId), () => calls.listImages(caseId))

/** What the server has of a case's images, and what is left of the quota. */
export function useImages(caseId: string) {
  return useCached<ImagesShown>(imagesName(caseId), () => calls.listImages(caseId))
}

const { shown, load } = perPerson<WaitingImage>(waitingOf)

/** Images that this person took and that are still on this phone. */
export const waitingImages = () => ({ value: shown().value.filter(({ thrown }) => thrown === undefined) })

/** Images that this person threw away here; the server does not know yet. */
export const thrownImages = () => ({ value: shown().value.filter(({ thrown }) => thrown !== undefined) })

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
  await load(person)
  void sendImages()
  return facts.id
}

/** SHA-256, in base64. */
export async function digestOf(bytes: ArrayBuffer): Promise<string> {
  return btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))))
}

/** Reads anew what waits on this phone. */
export const reloadImages = () => load(personId())

let sending = false
const retry = retrying(() => void sendImages())

/** Sends what waits, one image after the other; one tab of the phone at a time. */
export async function sendImages(): Promise<void> {
  const { locks } = navigator as Partial<Navigator>
  if (locks) return locks.request('images', { ifAvailable: true }, (lock) => (lock ? sendAll() : Promise.resolve()))
  if (sending) return
  sending = true
  await sendAll().finally(() => {
    sending = false
  })
}

const goes = ({ refused, thrown, look }: WaitingImage) =>
  thrown !== undefined || (refused === undefined && look !== 'open')

async function sendAll(): Promise<void> {
  const person = personId()
  for (;;) {
    // Asked anew after each: more may have been taken meanwhile.
    const next = (await waitingOf(person)).find(goes)
    if (!next || person !== personId()) return retry.over()
    try {
      await (next.thrown === undefined ? sendOne(next) : tellThrown(next, next.thrown))
      // Shown from the server before it leaves the phone: there is no moment without it.
      await refreshImages(next.caseId)
      await dropSent(next)
    } catch (error) {
      if (error instanceof Refused && error.status === 401) return
      if (error instanceof Refused && error.forGood) await takeRefusal(next, error)
      else if (error instanceof Refused || error instanceof Unreachable) return retry.later()
      else throw error
    } finally {
      await load(person)
    }
  }
}

/** What was removed on the server leaves the phone too; of what was thrown away here there is no more to tell. */
async function takeRefusal(image: WaitingImage, refusal: Refused): Promise<void> {
  if (refusal.code !== 'image-removed' && image.thrown === undefined) return noteRefusal(image.id, refusal.message)
  await refreshImages(image.caseId)
  await dropImage(image.id)
}

/** An event may name it: whoever looks for it learns that it will not come. */
async function tellThrown(image: WaitingImage, reason: RemovalReason): Promise<void> {
  if ((await begunAt(image)) === undefined) await calls.sendPart(image, 0, new ArrayBuffer(0))
  await calls.removeImage(image.caseId, image.id, reason)
}

async function sendOne(image: WaitingImage): Promise<void> {
  const bytes = await bytesOf(image.id)
  if (!bytes) return // thrown away just now
  let from = (await begunAt(image)) ?? 0
  for (;;) {
    const shown = await calls.sendPart(image, from, bytes.slice(from, from + PART_BYTES))
    if (shown.state !== 'awaited') return tellLooked(image, shown)
    from = shown.received_bytes
  }
}

/** Who looked on the phone looked: nobody is asked again. */
async function tellLooked({ look, caseId, id }: WaitingImage, shown: ImageShown): Promise<void> {
  if (look === 'nobody' && shown.name_check === 'open') await calls.checkNames(caseId, id)
}

/** From which byte the server goes on; undefined where it has not heard of the image. */
async function begunAt({ caseId, id }: WaitingImage): Promise<number | undefined> {
  try {
    return (await calls.getImage(caseId, id)).received_bytes
  } catch (error) {
    if (error instanceof Refused && error.status === 404) return undefined
    throw error
  }
}

/** Tries again what the server would not keep. */
export async function sendImageAgain(id: string): Promise<void> {
  await noteRefusal(id, undefined)
  await load(personId())
  await sendImages()
}

/** Takes an image off the phone before the server has it, with no connection too. */
export async function throwAway(id: string, reason: RemovalReason): Promise<void> {
  await throwOut(id, reason)
  await load(personId())
  void sendImages()
}

/** Removes an image from the server, for everyone, and what is left of it on this phone. It needs the connection. */
export async function removeImage(caseId: string, id: string, reason: RemovalReason): Promise<void> {
  await calls.removeImage(caseId, id, reason)
  await dropImage(id)
  await load(personId())
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

/** An address of an image on this phone, for as long as the screen shows it. */
export function useLocalImage(image: WaitingImage | undefined): string | undefined {
  const [address, setAddress] = useState<string>()
  useEffect(() => {
    let made: string | undefined
    let gone = false
    if (image)
      void bytesOf(image.id).then((bytes) => {
        if (!bytes || gone) return
        made = URL.createObjectURL(new Blob([bytes], { type: image.type }))
        setAddress(made)
      })
    return () => {
      gone = true
      if (made) URL.revokeObjectURL(made)
      setAddress(undefined)
    }
  }, [image?.id, image?.sha256])
  return address
}

/** Sends what waits whenever the connection, the screen or the sign-in comes back. */
export function startImages(): void {
  effect(() => {
    if (signIns.value >= 0) void sendImages()
  })
  whenLookedAt(() => void sendImages())
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
