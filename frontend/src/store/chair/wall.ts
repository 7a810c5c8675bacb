import type { CanalPlan } from '@/api/shapes'
import type { Chair } from './chair'
import type { ExpectedRest } from './expected'

type Wall = CanalPlan['outline']

/**
 * A canal's wall as far as the work has come, by the estimate; its initial shape before anything was done. With patients,
 * and where nothing is estimated, the shape that is planned.
 */
export function wallOf({ plan, course }: Chair, { canal, outline }: CanalPlan, ahead: ExpectedRest): Wall {
  const of = ahead.canals.find((rest) => rest.canal === canal)
  if (!of || plan.setting === 'clinic') return outline
  const { steps, initial_shape, prepared } = of.expectation
  if (course.canals[canal]?.state === 'finished' && prepared.length > 0) return prepared
  const last = steps[of.done - 1]?.shape
  if (last) return last
  return initial_shape.points.map(({ from_reference_mm, narrow_mm }) => ({ from_reference_mm, diameter_mm: narrow_mm }))
}
