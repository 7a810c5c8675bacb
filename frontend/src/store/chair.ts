import { useMemo } from 'preact/hooks'
import * as calls from '@/api/calls'
import type { Plan, Told, Treatment, VersionShown } from '@/api/shapes'
import { Course } from '@/walk/course'
import type { Happened } from '@/walk/happened'
import type { Setting } from '@/walk/visit'
import { treatmentName, unsent } from './outbox'
import { useVersion, useVersions } from './plans'
import { type Done, tell } from './record'
import type { Unsent } from './schema'
import { personId } from './session'
import { useKept } from './use'

/** A case at the chair: its plan and the course of everything recorded, sent or not. */
export interface Chair {
  readonly caseId: string
  readonly version: VersionShown
  readonly plan: Plan
  readonly course: Course
  readonly events: readonly Happened[]
  readonly waiting: readonly Unsent[]
  readonly treatment: Treatment
  /** True once it is written on the phone. */
  record(canal: string, node: string, told: Told): Promise<boolean>
}

/** What the server last said of the work, kept on the phone. */
export function useTreatment(caseId: string) {
  return useKept(treatmentName(caseId), () => calls.getTreatment(caseId))
}

/** The course of the case; undefined until its treatment and its plan are on the phone, null where none was approved. */
export function useChair(caseId: string, treatment: Treatment | undefined): Chair | null | undefined {
  const hash = treatment?.course?.plan_hash
  const listed = useVersions(caseId).value?.find((version) => version.hash === hash)
  const version = useVersion(hash === undefined ? undefined : listed?.id).value
  const waiting = unsent(caseId).value
  return useMemo(() => {
    if (treatment && !treatment.course) return null
    if (!treatment || !version || version.hash !== hash) return undefined
    return chairOf(caseId, version, treatment, waiting)
  }, [treatment, version, waiting, hash])
}

function chairOf(caseId: string, version: VersionShown, treatment: Treatment, waiting: readonly Unsent[]): Chair {
  const sent = new Set(treatment.events.map((event) => event.id))
  const pending = waiting.filter((entry) => !sent.has(entry.event.id))
  const events = [
    ...treatment.events.map(({ id, canal, node, plan_hash, told, actor }) =>
      happened(id, actor.id, plan_hash, canal, node, told),
    ),
    ...pending.map(({ event: { id, plan_hash, canal = '', node = '', told } }) =>
      happened(id, personId(), plan_hash, canal, node, told as Told),
    ),
  ]
  const sheets = Object.fromEntries(version.plan.canals.map((canal) => [canal.canal, canal.run_sheet]))
  const course = new Course({ [version.hash]: sheets }, version.hash, events, version.plan.setting as Setting)
  return {
    caseId,
    version,
    plan: version.plan,
    course,
    events,
    waiting: pending,
    treatment,
    record: (canal, node, told) => {
      const done: Done = { plan_hash: version.hash, seen_position: treatment.position, canal, node, told }
      return tell(caseId, done)
    },
  }
}

function happened(
  id: string,
  actor: string,
  plan: string,
  canal: string,
  node: string,
  { kind, ...body }: { kind: Happened['kind'] },
): Happened {
  return { id, kind, actor, plan, canal, node, body }
}
