import type { Lacking } from '@/api/shapes'
import { lacking } from '@/walk/lacking'
import type { Chair } from './chair'

/** What the hold point that a canal waits at lacks. */
export function lackingAt(chair: Pick<Chair, 'plan' | 'course' | 'events'>, canal: string): readonly Lacking[] {
  const planned = chair.plan.canals.find((shown) => shown.canal === canal)
  const course = chair.course.canals[canal]
  if (!planned || !course) return []
  return lacking(canal, course, planned.length.state, chair.events, planned.run_sheet, chair.course.undone)
}
