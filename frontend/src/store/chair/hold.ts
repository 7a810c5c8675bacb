import * as calls from '@/api/calls'
import type { EventShown, OnSiteSignOff } from '@/api/shapes'
import { replace } from '@/store/cache/cached'
import { useCached } from '@/store/cache/hooks'
import { treatmentName } from '@/store/outbox/outbox'
import { membership, personId } from '@/store/session/session'
import type { PayloadOf } from '@/walk/course-event'
import type { Chair } from './chair'

/** A supervisor's sign-off as the server has it. */
export interface SignOffGiven {
  readonly name: string
  readonly at: string
  readonly node: string
  readonly payload: PayloadOf<'sign_off'>
}

const signOffOf = ({ actor, server_time, node, payload }: EventShown): SignOffGiven => ({
  name: actor.name,
  at: server_time,
  node,
  payload: payload as PayloadOf<'sign_off'>,
})

/** The canal's sign-offs that the server has, in their order. */
function signOffsOf(chair: Chair, canal: string): readonly EventShown[] {
  const signOffs = chair.events.filter((event) => event.kind === 'sign_off' && event.canal === canal)
  return signOffs.flatMap(({ id }) => shownEvent(chair, id) ?? [])
}

/** The last sign-off of the canal that counted. */
export function lastSignOff(chair: Chair, canal: string): SignOffGiven | undefined {
  const last = signOffsOf(chair, canal).findLast(({ id }) => chair.course.signOffCounts(canal, id))
  return last && signOffOf(last)
}

/** The sign-off of somebody who was first, where the reader's own came after it at the same hold point. */
export function wasFirst(chair: Chair, canal: string): SignOffGiven | undefined {
  const mine = signOffsOf(chair, canal).findLast((event) => event.actor.id === personId())
  if (!mine || chair.course.outOfCourse[mine.id] !== 'other_step') return undefined
  const first = signOffsOf(chair, canal).findLast(
    (event) => event.node === mine.node && event.position < mine.position && !chair.course.outOfCourse[event.id],
  )
  return first && signOffOf(first)
}

/** The canal's sign-offs that were given although something was missing. They stay on the screen for good. */
export function approvedDespiteMissing(chair: Chair, canal: string): readonly SignOffGiven[] {
  return signOffsOf(chair, canal)
    .map(signOffOf)
    .filter(({ payload }) => payload.despite_missing)
}

/** What was recorded in the canal since the last sign-off on it that counted. */
export function sinceLastSignOff({ treatment, course }: Chair, canal: string): readonly EventShown[] {
  const ofCanal = treatment.events.filter((event) => event.canal === canal)
  const last = ofCanal.findLastIndex(
    ({ id, payload }) => payload.kind === 'sign_off' && course.signOffCounts(canal, id),
  )
  return ofCanal.slice(last + 1)
}

/** The event, where the server has it already. */
export function shownEvent({ treatment }: Chair, id: string | null): EventShown | undefined {
  return treatment.events.find((event) => event.id === id)
}

/** A supervisor's sign-off with a one-time code; the server checks it, so it needs the connection. */
export async function signOffOnSite(caseId: string, body: OnSiteSignOff): Promise<void> {
  await replace(treatmentName(caseId), await calls.signOffOnSite(caseId, body))
}

/** The programme's supervisors, and whose codes count. */
export function useSigners() {
  const id = membership.value?.programme.id
  return useCached(id && `supervisors of ${id}`, async () => [...(await calls.getProgramme(id ?? '')).supervisors])
}
