import { useEffect, useMemo } from 'preact/hooks'
import * as calls from '@/api/calls'
import type {
  Asked,
  EventGiven,
  EventPayload,
  Plan,
  Setting,
  Treatment,
  VersionListed,
  VersionShown,
  VersionSlim,
} from '@/api/shapes'
import { refresh } from '@/store/cache/cached'
import { useCached } from '@/store/cache/hooks'
import { refreshPlan, useVersion, useVersions } from '@/store/cache/plans'
import type { Unsent } from '@/store/device/schema'
import { emergenciesWaiting } from '@/store/outbox/emergencies'
import { treatmentName, unsent, unsentKnown } from '@/store/outbox/outbox'
import { type NewEvent, recordEvent } from '@/store/outbox/record'
import { askTreatment, lostOf } from '@/store/outbox/set-back'
import { membership, personId } from '@/store/session/session'
import { CaseState, type Sheets } from '@/walk/course'
import { type CourseEvent, courseEvent } from '@/walk/course-event'
import { byName } from '@/walk/own'
import { mayTell } from './part'

/** A case at the chair: its plan and the course of everything recorded, sent or not. */
export interface Chair {
  readonly caseId: string
  readonly version: VersionShown
  readonly plan: Plan
  readonly course: CaseState
  readonly events: readonly CourseEvent[]
  readonly waiting: readonly Unsent[]
  readonly treatment: Treatment
  /** True once it is written on the phone; false where it could not be, or is not this person's to tell. */
  record(canal: string, node: string, payload: EventPayload): Promise<boolean>
}

/** What the server last said of the work, kept on the phone. */
export function useTreatment(caseId: string) {
  return useCached(treatmentName(caseId), () => askTreatment(caseId))
}

export const refreshTreatment = (caseId: string) => refresh(treatmentName(caseId), () => askTreatment(caseId))

/** Whether this person works the case; a supervisor does once they took over, as the server last said. */
export function useWorks(caseId: string): boolean {
  const role = membership.value?.role
  const name = role === 'supervisor' ? treatmentName(caseId) : undefined
  const said = useCached<Treatment>(name, () => askTreatment(caseId)).value
  return role === 'student' || (role === 'supervisor' && said?.course?.taken_over === personId())
}

/** The course of the case; undefined until its treatment and its plans are on the phone, null where none was approved. */
export function useChair(caseId: string, treatment: Treatment | undefined): Chair | null | undefined {
  const hash = treatment?.course?.plan_hash
  const versions = useVersions(caseId)
  const listed = versions.value?.find((version) => version.hash === hash)
  // A version that has just taken over is newer than the list on the phone.
  useEffect(() => {
    if (hash !== undefined && versions.value && !listed) versions.again()
  }, [hash])
  const version = useVersion(hash === undefined ? undefined : listed?.id).value
  const earlier = useEarlier(caseId, versions.value, treatment)
  const waiting = unsent(caseId).value
  const emergencies = emergenciesWaiting(caseId)
  const lost = lostOf(caseId)
  const ids = [...lost, ...emergencies].map((event) => event.id).join()
  const known = unsentKnown(caseId)
  return useMemo(() => {
    if (treatment && !treatment.course) return null
    if (!treatment || !known || !version || version.hash !== hash || !earlier) return undefined
    return chairOf(caseId, version, earlier, treatment, waiting, { lost, emergencies })
  }, [treatment, version, earlier, waiting, ids, known, hash])
}

/** The plans that were in force before the present one, the first one first. */
type Earlier = readonly { readonly hash: string; readonly sheets: Sheets }[]

const NONE: Earlier = []

/** Their run sheets, kept on the phone; undefined until all are there. */
export function useEarlier(
  caseId: string,
  versions: readonly VersionListed[] | undefined,
  treatment: Treatment | undefined,
): Earlier | undefined {
  const present = treatment?.course?.plan_hash
  const inForce = (treatment?.events ?? []).flatMap(({ plan_hash, payload }) =>
    payload.kind === 'replan' ? [payload.replaces, plan_hash] : [],
  )
  const hashes = [...new Set(inForce)].filter((hash) => hash !== present)
  const ids = hashes.flatMap((hash) => versions?.find((version) => version.hash === hash)?.id ?? [])
  const complete = ids.length === hashes.length
  const name = hashes.length > 0 && complete ? `plans worked in ${caseId} before ${ids.join(' ')}` : undefined
  const kept = useCached(name, async (): Promise<Earlier> => {
    const fetched = await Promise.all(ids.map((id) => calls.getVersion(id)))
    return fetched.map(({ hash, plan }) => ({ hash, sheets: sheetsOf(plan) }))
  })
  return hashes.length === 0 ? NONE : kept.value
}

const sheetsOf = (plan: Plan): Sheets => byName(plan.canals.map((canal) => [canal.canal, canal.run_sheet]))

function chairOf(
  caseId: string,
  version: VersionShown,
  earlier: Earlier,
  treatment: Treatment,
  waiting: readonly Unsent[],
  others: Record<'lost' | 'emergencies', readonly { readonly event: EventGiven }[]>,
): Chair {
  const setting = version.plan.setting as Setting
  const sent = new Set(treatment.events.map((event) => event.id))
  const pending = waiting.filter((entry) => !sent.has(entry.event.id))
  // What the server has lost stands before what waits: nobody is sent back while it is on its way again.
  const unseen = [...others.lost, ...pending, ...others.emergencies].filter(({ event }) => !sent.has(event.id))
  const events = [
    ...treatment.events.map(({ id, canal, node, plan_hash: plan, payload, actor, not_checked: notChecked }) =>
      courseEvent({ id, actor: actor.id, plan, canal, node, notChecked }, payload),
    ),
    ...unseen.map(({ event: { id, plan_hash: plan, canal = '', node = '', payload } }) =>
      courseEvent({ id, actor: personId(), plan, canal, node }, payload),
    ),
  ]
  const plans = byName<Sheets>([
    ...earlier.map((version) => [version.hash, version.sheets] as const),
    [version.hash, sheetsOf(version.plan)],
  ])
  const course = new CaseState(plans, fromTheFirst(events, earlier[0]?.hash ?? version.hash), setting)
  return {
    caseId,
    version,
    plan: version.plan,
    course,
    events,
    waiting: pending,
    treatment,
    record: async (canal, node, payload) => {
      if (!mayTell(course, payload.kind)) return false
      const done: NewEvent = { plan_hash: version.hash, seen_position: treatment.position, canal, node, payload }
      return recordEvent(caseId, done)
    },
  }
}

/**
 * The events, beginning with the first plan coming into force. An answer that was kept from before the server recorded that
 * lacks it: here it is put in front.
 */
function fromTheFirst(events: readonly CourseEvent[], first: string): readonly CourseEvent[] {
  if (events.some((event) => event.kind === 'replan' && event.payload.replaces === event.plan)) return events
  const inForce = { id: '', actor: '', plan: first, canal: '', node: '' }
  return [courseEvent(inForce, { kind: 'replan', replaces: first }), ...events]
}

/** Has the server plan anew with the same choices. Returns the version. */
export async function planAgain(
  caseId: string,
  id: string,
  { kit_id, technique, choices }: Asked,
): Promise<VersionSlim> {
  try {
    return await calls.proposePlan(caseId, { id, kit_id, technique, choices })
  } finally {
    await refreshPlan(caseId)
    await refresh(treatmentName(caseId), () => askTreatment(caseId))
  }
}
