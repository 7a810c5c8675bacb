import { useState } from 'preact/hooks'
import type { Plan } from '@/api/shapes'
import { Choice } from '@/parts/fields'
import { words } from '@/words/en'
import { TrayList, TrayOrder } from './tray'

/** What is asked for and laid out, and in which order the instruments are taken up for all canals. */
export function AtTheTray({ plan }: { plan: Plan }) {
  const [shared, setShared] = useState(true)
  return (
    <div class="stack">
      <AskedFor plan={plan} />
      {plan.tray_list.length > 0 ? <TrayList items={plan.tray_list} /> : <p>{words.order.nothingOpen}</p>}
      {plan.canals.length > 1 && plan.tray_list.length > 0 && (
        <Choice
          label={words.order.way}
          value={shared ? 'shared' : 'single'}
          hint={words.order.fewer(plan.one_at_a_time.changes - plan.tray.changes)}
          options={[
            { value: 'shared', says: words.order.shared(plan.tray.changes) },
            { value: 'single', says: words.order.single(plan.one_at_a_time.changes) },
          ]}
          onChoose={(way) => setShared(way === 'shared')}
        />
      )}
      <TrayOrder plan={plan} shared={shared} />
    </div>
  )
}

/** How often the plan asks for a supervisor's sign-off and for an image, and of which canals at once. */
export function AskedFor({ plan }: { plan: Plan }) {
  const { asks } = plan
  if (!asks) return null
  return (
    <details class="asked-for">
      <summary>{words.together.asks(asks.sign_offs, asks.exposures)}</summary>
      <ul class="ledger">
        <li>{words.together.onThePlan}</li>
        {asks.stages.map((stage) => (
          <li key={`${stage.phase} ${stage.canals.join()}`}>
            <b>{words.together.stage(stage.hold_point || stage.title, stage.canals)}</b>
            <span class="small soft">
              {[
                words.together.signOffsAt(stage.sign_offs),
                ...stage.exposures.map((exposure) => words.together.exposure(exposure.canals, exposure.turned)),
              ].join(' · ')}
            </span>
          </li>
        ))}
      </ul>
    </details>
  )
}
