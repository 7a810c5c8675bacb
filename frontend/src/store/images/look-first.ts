import { signal } from '@preact/signals'
import { blackened, type Wipe } from './blackened'
import { bytesOf, noteLook, putInstead } from './image-store'
import { reloadImages, sendImages, waitingImages } from './images'
import { digestOf } from './take'

export type { Wipe } from './blackened'

// What the browser can draw is looked at on the phone before it is sent: is somebody named in it? Until that is answered
// the picture stays here.

const postponed = signal<ReadonlySet<string>>(new Set())

/** The picture of a case to look at now: the first that is held back and was not put off. */
export const toLookAt = (case_id: string) =>
  waitingImages().value.find(
    ({ id, caseId, look }) => caseId === case_id && look === 'open' && !postponed.value.has(id),
  )

/** Leaves those of a case for later: they stay on the phone, and are not sent. */
export function lookLater(case_id: string): void {
  const held = waitingImages().value.filter(({ caseId, look }) => caseId === case_id && look === 'open')
  postponed.value = new Set([...postponed.value, ...held.map(({ id }) => id)])
}

/** Asks again about all that were put off. */
export function lookNow(): void {
  postponed.value = new Set()
}

/** Somebody looked, and nobody is named: it may go. */
export const nobodyNamed = (id: string) => answer(id, 'nobody')

/** The phone cannot show it: whoever sees it on the server looks. */
export const lookElsewhere = (id: string) => answer(id, undefined)

async function answer(id: string, look: 'nobody' | undefined): Promise<void> {
  await noteLook(id, look)
  await reloadImages()
  void sendImages()
}

/** Puts the blackened picture in the place of the one that was taken, which is gone; it is looked at once more. */
export async function blackOut(id: string, type: string, wipes: readonly Wipe[]): Promise<void> {
  const bytes = await bytesOf(id)
  if (!bytes) return
  const made = await blackened(new Blob([bytes], { type }), wipes)
  const instead = await made.arrayBuffer()
  await putInstead(id, { type: made.type, length: instead.byteLength, sha256: await digestOf(instead) }, instead)
  await reloadImages()
}
