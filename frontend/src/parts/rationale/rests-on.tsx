import type { CanalPlan, Plan } from '@/api/shapes'
import { words } from '@/words/en'
import { Rows } from './rows'

type Said = Pick<Plan, 'rows_used' | 'planner_version' | 'data_version' | 'notice'>

/** Every figure that a plan rests on, with its source and how it is known, and what made it. */
export function RestsOn({ plan }: { plan: Said }) {
  return (
    <>
      <Rows rows={plan.rows_used} />
      <p class="small soft">{words.rationale.made(plan.planner_version, plan.data_version)}</p>
      <p class="small">{plan.notice}</p>
    </>
  )
}

interface Props {
  canal: CanalPlan
  /** Which number is asked about. */
  of: string
}

/** What a canal's length or size rests on besides: every reading with what it counts for, every reason for a size. */
export function Beside({ canal, of }: Props) {
  const sized = /^(size_range|final_size)/.test(of)
  const long = /^(length|stops|end_mm|junction_mm)/.test(of)
  const { length, size_range } = canal
  const lines = [
    ...(long ? [words.rationale.length(length.state, length.rests_on)] : []),
    ...(long ? length.readings.map(({ method, why }) => `${words.method(method)}: ${why}`) : []),
    ...(sized ? size_range.reasons.map(({ says }) => says) : []),
  ]
  return (
    <>
      {lines.map((says) => (
        <p key={says} class="small">
          {says}
        </p>
      ))}
    </>
  )
}
