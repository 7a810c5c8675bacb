import type { SheetStep } from '@/api/shapes'
import type { CaseState } from './course'
import type { CourseEvent } from './course-event'

const SALINE = 'saline'

/** The irrigant of this step: the planned one, or saline while nothing else may go in; null where none is planned. */
export function irrigantAt(course: CaseState, node: SheetStep): string | null {
  return node.irrigant && course.salineBy ? SALINE : node.irrigant
}

/** The irrigants on offer besides the order of work: those that the plan has for any canal, and saline. */
export function irrigantsOf(course: CaseState): string[] {
  if (course.salineBy) return [SALINE]
  const nodes = Object.values(course.canals).flatMap(({ walk }) => Object.values(walk.sheet.nodes))
  const planned = nodes.flatMap((node) => (node.kind === 'do' && node.irrigant ? [node.irrigant] : []))
  return [...new Set([...planned, SALINE])]
}

/** Millilitres of each irrigant that went into one canal. An event out of course counts too: it did happen. */
export function givenIn(
  canal: string,
  events: readonly CourseEvent[],
  undone: ReadonlySet<string>,
): Record<string, number> {
  const total: Record<string, number> = {}
  for (const event of events) {
    if (event.canal !== canal || undone.has(event.id)) continue
    if (event.kind !== 'step' && event.kind !== 'irrigated') continue
    const { irrigant, volume_ml } = event.payload
    if (irrigant && volume_ml != null) total[irrigant] = (total[irrigant] ?? 0) + volume_ml
  }
  return total
}
