import type { Plan } from '@/api/shapes'
import { advised, sizeOf } from '@/parts/final-size'
import { words } from '@/words/en'
import { Rows } from './rows'

/** What the plan rests on: lengths and sizes canal by canal, then every figure with its source and how it is known. */
export function Why({ plan }: { plan: Plan }) {
  return (
    <div class="stack">
      <h2>{words.why.canals}</h2>
      {plan.canals.map((canal) => (
        <section key={canal.canal} class="card stack close">
          <h3>{canal.canal}</h3>
          <p>{words.why.length(canal.length.state, canal.length.rests_on)}</p>
          {canal.length.readings.map((reading, i) => (
            <p key={`${i}${reading.method}`} class="small soft">
              {words.method(reading.method)}: {reading.why}
            </p>
          ))}
          <p>{words.why.size(sizeOf(canal), advised(canal.size_range))}</p>
          {canal.size_range.reasons.map((reason) => (
            <p key={reason.says} class="small soft">
              {reason.says}
            </p>
          ))}
        </section>
      ))}
      <h2>{words.why.figures}</h2>
      <Rows rows={plan.rows_used} />
      <p class="small soft">{words.why.made(plan.planner_version, plan.data_version)}</p>
      <p class="small">{plan.notice}</p>
    </div>
  )
}
