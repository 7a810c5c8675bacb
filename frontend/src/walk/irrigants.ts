import type { Do } from '@/api/shapes'
import type { CaseState } from './course'
import type { CourseEvent } from './course-event'

const SALINE = 'saline'

/** What goes in at this step now: as planned, or saline alone. */
export function irrigantAt(course: CaseState, node: Do): string | null {
  return node.irrigant && course.salineBy ? SALINE : node.irrigant
}

/** What may be given beside the order of work: what the plan has for any canal, and saline. */
export function irrigantsOf(course: CaseState): string[] {
  if (course.salineBy) return [SALINE]
  const nodes = Object.values(course.canals).flatMap(({ walk }) => Object.values(walk.sheet.nodes))
  const planned = nodes.flatMap((node) => (node.kind === 'do' && node.irrigant ? [node.irrigant] : []))
  return [...new Set([...planned, SALINE])]
}

/** Millilitres by irrigant that went into one canal; what was told out of course went in all the same. */
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
