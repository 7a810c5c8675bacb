import type { CanalPlan, Plan } from '@/api/shapes'
import { sizeOf } from '@/parts/final-size'
import { mm } from '@/units/millimetres'
import type { ReviewFields } from './review-fields'

/** What a supervisor decides on one canal; open until it is decided. */
type Verdict = 'open' | 'agreed' | 'change'

const AFTER = { open: 'agreed', agreed: 'change', change: 'open' } as const

export function verdictOf({ agreed = [], returned }: ReviewFields, canal: string): Verdict {
  if (returned.includes(canal)) return 'change'
  return agreed.includes(canal) ? 'agreed' : 'open'
}

/** The next verdict on a canal: agreed, to be changed, open again. */
export function turned(fields: ReviewFields, canal: string): Pick<ReviewFields, 'agreed' | 'returned'> {
  const next = AFTER[verdictOf(fields, canal)]
  const others = (canals: readonly string[]) => canals.filter((other) => other !== canal)
  return {
    agreed: [...others(fields.agreed ?? []), ...(next === 'agreed' ? [canal] : [])],
    returned: [...others(fields.returned), ...(next === 'change' ? [canal] : [])],
  }
}

/** The canals that nobody has decided on yet. */
export const undecided = ({ canals }: Pick<Plan, 'canals'>, fields: ReviewFields): readonly string[] =>
  canals.map(({ canal }) => canal).filter((canal) => verdictOf(fields, canal) === 'open')

/** What moved in a canal since an earlier plan, in numbers: '30/.04 → 35/.04', '19.5 → 19.0'. */
export function moved(now: CanalPlan, before: CanalPlan | undefined): readonly string[] {
  if (!before) return []
  const end = ({ end_mm }: CanalPlan) => (end_mm === null ? '–' : mm(end_mm))
  const pairs = [
    [sizeOf(before), sizeOf(now)],
    [end(before), end(now)],
  ] as const
  return pairs.filter(([was, is]) => was !== is).map(([was, is]) => `${was} → ${is}`)
}
