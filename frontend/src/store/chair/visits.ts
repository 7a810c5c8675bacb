import * as calls from '@/api/calls'
import type { CanalPlan, EventShown, PersonRef } from '@/api/shapes'
import { useCase } from '@/store/cache/cases'
import { useCached } from '@/store/cache/hooks'
import { membership, personId, session } from '@/store/session/session'
import type { CourseEvent, Kind } from '@/walk/course-event'
import type { Chair } from './chair'

/** The supervisors of the programme, who may be in the room; undefined until the phone has had them once. */
export function useSupervisors(): readonly PersonRef[] | undefined {
  const programme = membership.value?.programme.id
  return useCached(
    programme && `supervisors of ${programme}`,
    async () => (await calls.getProgramme(programme ?? '')).supervisors,
  ).value
}

/** The supervisor who was named for the case, wherever they are; undefined where none was. */
export function useNamedFor(caseId: string): PersonRef | undefined {
  return useCase(caseId).value?.supervisor ?? undefined
}

/** The last event of this kind that moved something. */
export function lastOf<K extends Kind>(
  { course, events }: Chair,
  kind: K,
  fits: (event: CourseEvent) => boolean = () => true,
): Extract<CourseEvent, { kind: K }> | undefined {
  const moved = (e: CourseEvent) => !course.outOfCourse[e.id] && !course.undone.has(e.id)
  return events.findLast((e): e is Extract<CourseEvent, { kind: K }> => e.kind === kind && moved(e) && fits(e))
}

/** Who recorded it, by name. */
export function actorOf({ treatment }: Chair, { id, actor }: CourseEvent): string {
  const sent: EventShown | undefined = treatment.events.find((event) => event.id === id)
  return sent?.actor.name ?? (actor === personId() ? (session.value?.person.name ?? '') : '')
}

interface Worked {
  /** The instrument that was last in the canal. */
  readonly instrument: string
  readonly depth_um: number | null
  /** How deep anything has been. */
  readonly deepest_um: number | null
}

/** What was done in a canal so far; undefined where nothing has been in it. */
export function workedIn({ course, events, plan }: Chair, { canal, run_sheet }: CanalPlan): Worked | undefined {
  const steps = events.filter((e) => e.kind === 'step').filter((e) => e.canal === canal && !course.undone.has(e.id))
  const used = steps.flatMap(({ node, payload: { depth_um = null } }) => {
    const step = run_sheet.nodes[node]
    const key = step?.kind === 'do' ? step.instrument : null
    return key ? [{ instrument: nameOf(plan, key), depth_um }] : []
  })
  const last = used.at(-1)
  if (!last) return undefined
  const depths = used.flatMap(({ depth_um }) => (depth_um === null ? [] : [depth_um]))
  return { ...last, deepest_um: depths.length ? Math.max(...depths) : null }
}

/** The small instrument that finds the way again: the one the order of work recapitulates with, else its first. */
export function smallOf({ plan }: Chair, { run_sheet }: CanalPlan): string {
  const steps = Object.values(run_sheet.nodes).filter((node) => node.kind === 'do')
  const small = steps.find((step) => step.action === 'recapitulate') ?? steps.find((step) => step.instrument)
  return small?.instrument ? nameOf(plan, small.instrument) : ''
}

const nameOf = ({ tray_list }: Chair['plan'], key: string) =>
  tray_list.find((item) => item.instrument.key === key)?.instrument.name ?? key
