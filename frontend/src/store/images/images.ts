import { effect } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import * as calls from '@/api/images'
import { Refused, Unreachable } from '@/api/problem'
import type { ImageShown, ImagesShown, RemovalReason } from '@/api/shapes'
import { refresh } from '@/store/cache/cached'
import { useCached } from '@/store/cache/hooks'
import { retrying, whenLookedAt } from '@/store/device/retry'
import { perPerson } from '@/store/session/per-person'
import { personId, signIns } from '@/store/session/session'
import { bytesOf, dropImage, dropSent, noteRefusal, throwOut, type WaitingImage, waitingOf } from './image-store'

// An image is written first, shown at once, and sent in parts until the server has stored it. What is told of it at the
// chair never waits for it.

export { imageAddress } from '@/api/images'
export type { WaitingImage } from './image-store'

const PART_BYTES = 512_000 // what a thin line carries before a phone gives up on the answer

const imagesName = (caseId: string) => `images of ${caseId}`

export const refreshImages = (caseId: string) => refresh(imagesName(caseId), () => calls.listImages(caseId))

/** What the server has of a case's images, and what is left of the quota. */
export function useImages(caseId: string) {
  return useCached<ImagesShown>(imagesName(caseId), () => calls.listImages(caseId))
}

const { shown, load } = perPerson<WaitingImage>(waitingOf)

/** Images that this person took and that are still on this phone. */
export const waitingImages = () => ({ value: shown().value.filter(({ thrown }) => thrown === undefined) })

/** Images that this person threw away here; the server does not know yet. */
export const thrownImages = () => ({ value: shown().value.filter(({ thrown }) => thrown !== undefined) })

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
