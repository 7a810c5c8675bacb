import { effect } from '@preact/signals'
import * as calls from '@/api/markings'
import { Refused, Unreachable } from '@/api/problem'
import type { BendsInSpaceShown, MarkingsShown, NewBendInSpace, NewMarking, TwoViewsRead, Views } from '@/api/shapes'
import { refresh } from '@/store/cache/cached'
import { refreshCase } from '@/store/cache/cases'
import { useCached } from '@/store/cache/hooks'
import { retrying, whenLookedAt } from '@/store/device/retry'
import { uuid7 } from '@/store/device/uuid7'
import { perPerson } from '@/store/session/per-person'
import { personId, signIns } from '@/store/session/session'
import { waitingImages } from './images'
import { drop, type WaitingMarking, waitingOf, write } from './marking-store'

// Marks are written first and sent after their image.

const nameOf = (imageId: string) => `markings of ${imageId}`

/** What was marked on an image, and what its file says of its scale. */
export function useMarkings(caseId: string, imageId: string) {
  return useCached<MarkingsShown>(nameOf(imageId), () => calls.listMarkings(caseId, imageId))
}

const { shown, load } = perPerson<WaitingMarking>(waitingOf)

/** Markings that this person made and that are still on this phone. */
export const waitingMarkings = shown

/** Keeps marks on the phone before anything else; then they are sent. */
export async function keepMarking(caseId: string, imageId: string, body: NewMarking): Promise<void> {
  const person = personId()
  await write({ id: uuid7(), person, caseId, imageId, body })
  await load(person)
  void sendMarkings()
}

let sending: Promise<void> | undefined
let onceMore = false
const retry = retrying(() => void sendMarkings())

/** Sends what waits, one after the other; `again` also that one, which the server would not take before. */
export async function sendMarkings(again?: string): Promise<void> {
  const person = personId()
  const refused = (await waitingOf(person)).find(({ id }) => id === again)
  if (refused) {
    const { refused: _, ...fresh } = refused
    await write(fresh)
  }
  onceMore = true
  sending ??= sendWhileAsked(person).finally(() => {
    sending = undefined
  })
  await sending
}

async function sendWhileAsked(person: string): Promise<void> {
  while (onceMore && person === personId()) {
    onceMore = false
    for (const next of await waitingOf(person)) {
      const onPhone = waitingImages().value.some(({ id }) => id === next.imageId)
      if (next.refused === undefined && !onPhone && !(await sendOne(next))) return
    }
  }
}

/** False where nothing more can be sent for now. */
async function sendOne(next: WaitingMarking): Promise<boolean> {
  try {
    await calls.sendMarking(next)
    retry.over()
    await drop(next.id)
    await refresh(nameOf(next.imageId), () => calls.listMarkings(next.caseId, next.imageId))
    await refreshCase(next.caseId)
    return true
  } catch (error) {
    if (error instanceof Refused && error.forGood) {
      await write({ ...next, refused: error.fields[0]?.detail ?? error.message })
      return true
    }
    if (!(error instanceof Refused) && !(error instanceof Unreachable)) throw error
    // Signed out: the next sign-in sends.
    if (!(error instanceof Refused && error.status === 401)) retry.later()
    return false
  } finally {
    await load(next.person)
  }
}

/** Takes marks off the phone that the server would not take. */
export async function dropMarking(id: string): Promise<void> {
  await drop(id)
  await load(personId())
}

/** Sends what waits whenever the connection, the screen, the sign-in or an image gets through. */
export function startMarkings(): void {
  effect(() => {
    if (signIns.value >= 0 && waitingImages().value) void sendMarkings()
  })
  whenLookedAt(() => void sendMarkings())
}

/** What two views of one root tell together; the server computes it and keeps nothing. */
export function readTwoViews(views: Views): Promise<TwoViewsRead> {
  return calls.readTwoViews(views)
}

const bendsName = (canalId: string) => `bends in space of ${canalId}`

/** Every bend in space of a canal, the last one counts. */
export function useBendsInSpace(canalId: string) {
  return useCached<BendsInSpaceShown>(bendsName(canalId), () => calls.listBendsInSpace(canalId))
}

/** Combines two views for good; the server charts what they come to. `id` is the same when it is tried again. */
export async function combineViews(caseId: string, canalId: string, id: string, body: NewBendInSpace): Promise<void> {
  await calls.combineViews(canalId, id, body)
  await refresh(bendsName(canalId), () => calls.listBendsInSpace(canalId))
  await refreshCase(caseId)
}
