import { useState } from 'preact/hooks'
import type { Plan } from '@/api/shapes'
import { CanalFigures } from '@/parts/canal-figures/canal-figures'
import { Choice } from '@/parts/fields'
import { words } from '@/words/en'
import { OrderOfWork } from './order-of-work'
import { TrayList, TrayOrder } from './tray'

const TRAY = 'tray'

interface Props {
  plan: Plan
  picked: string | undefined
  onPick: (canal: string) => void
  /** Whether expected depths are shown. */
  expected: boolean
}

/** The order of work at the tray, or of one canal. */
export function OrderView({ plan, picked, onPick, expected }: Props) {
  const [whose, setWhose] = useState(TRAY)
  const [shared, setShared] = useState(true)
  const canal = plan.canals.find((c) => c.canal === whose)
  const choose = (key: string) => {
    setWhose(key)
    if (key !== TRAY && key !== picked) onPick(key)
  }
  return (
    <div class="stack">
      <AskedFor plan={plan} />
      <Choice
        label={words.order.whose}
        value={whose}
        options={[
          { value: TRAY, says: words.order.atTheTray },
          ...plan.canals.map((c) => ({ value: c.canal, says: c.canal })),
        ]}
        onChoose={choose}
      />
      {canal ? (
        <>
          <OrderOfWork
            canal={canal}
            instruments={plan.tray_list.map((item) => item.instrument)}
            stops={plan.stop_table}
            expected={expected}
          />
          <CanalFigures canal={canal} />
        </>
      ) : (
        <>
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
        </>
      )}
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
