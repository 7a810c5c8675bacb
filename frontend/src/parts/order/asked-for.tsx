import type { Plan } from '@/api/shapes'
import { words } from '@/words/en'

/** How often the plan asks for a supervisor's word and for an image, and of which canals at once. */
export function AskedFor({ plan }: { plan: Plan }) {
  const { asks } = plan
  if (!asks) return null
  return (
    <details class="asked-for">
      <summary>{words.together.asks(asks.words, asks.exposures)}</summary>
      <ul class="ledger">
        <li>{words.together.onThePlan}</li>
        {asks.stages.map((stage) => (
          <li key={`${stage.phase} ${stage.canals.join()}`}>
            <b>{words.together.stage(stage.hold_point || stage.title, stage.canals)}</b>
            <span class="small soft">
              {[
                words.together.wordsAt(stage.words),
                ...stage.exposures.map((one) => words.together.exposure(one.canals, one.turned)),
              ].join(' · ')}
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}
