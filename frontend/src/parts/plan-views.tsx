import { useState } from 'preact/hooks'
import type { Plan } from '@/api/shapes'
import { words } from '@/words/en'
import { Cautions } from './cautions'
import { DepthBoard } from './depth-board/depth-board'
import { coronalStops } from './depth-board/shape'
import { Choice } from './fields'
import { OrderOfWork } from './order/order-of-work'
import { TrayList, TrayOrder } from './order/tray'
import { StopTable } from './stop-table/stop-table'
import { Tabs, TabView } from './tabs'
import { Why } from './why'
import './plan-views.css'

interface Props {
  plan: Plan
  /** The version it is compared with: its outline lies over the board. */
  before?: Plan | undefined
  picked: string | undefined
  onPick: (canal: string) => void
  /** What stands beside or under the board: choices, or remarks. */
  beside: preact.ComponentChildren
}

type View = 'depths' | 'stops' | 'order' | 'cautions' | 'why'

/** One plan in five views. */
export function PlanViews({ plan, before, picked, onPick, beside }: Props) {
  const [view, setView] = useState<View>('depths')
  const grave = plan.cautions.filter((c) => c.severity !== 'note').length
  const tabs = (['depths', 'stops', 'order', 'cautions', 'why'] as const).map((key) => ({
    key,
    label: words.views[key],
    ...(key === 'cautions' && grave > 0 ? { mark: <span class="tab-mark">{grave}</span> } : {}),
  }))
  return (
    <>
      <Tabs name={words.views.name} tabs={tabs} current={view} onChoose={(key) => setView(key as View)} />
      <TabView tab={view}>
        {view === 'depths' && (
          <div class="plan-depths">
            <div class="plan-board">
              <DepthBoard
                canals={plan.canals}
                coronal={coronalStops(plan.canals, plan.stop_table)}
                before={before?.canals}
                picked={picked}
                onPick={onPick}
              />
              {plan.canals.length > 1 && <PickCanal plan={plan} picked={picked} onPick={onPick} />}
            </div>
            <div class="stack plan-beside">{beside}</div>
          </div>
        )}
        {view === 'stops' && <StopsView plan={plan} />}
        {view === 'order' && <OrderView plan={plan} picked={picked} onPick={onPick} />}
        {view === 'cautions' && <Cautions cautions={plan.cautions} />}
        {view === 'why' && <Why plan={plan} />}
      </TabView>
    </>
  )
}

type PickProps = Pick<Props, 'plan' | 'picked' | 'onPick'>

function PickCanal({ plan, picked, onPick }: PickProps) {
  return (
    <div class="pick-canal">
      <Choice
        label={words.views.canal}
        value={picked}
        options={plan.canals.map((c) => ({ value: c.canal, says: c.canal }))}
        onChoose={onPick}
      />
    </div>
  )
}

function StopsView({ plan }: { plan: Plan }) {
  return (
    <div class="stack">
      <p class="only-on-paper strong">{words.stops.paper(plan.tooth.iso, plan.technique, plan.kit)}</p>
      <StopTable rows={plan.stop_table} canals={plan.canals} />
      <p class="small">{plan.notice}</p>
      <button type="button" class="button not-on-paper" onClick={() => print()}>
        {words.stops.print}
      </button>
    </div>
  )
}

const TRAY = 'tray'

function OrderView({ plan, picked, onPick }: PickProps) {
  const [whose, setWhose] = useState(TRAY)
  const [shared, setShared] = useState(true)
  const canal = plan.canals.find((c) => c.canal === whose)
  const choose = (key: string) => {
    setWhose(key)
    if (key !== TRAY && key !== picked) onPick(key)
  }
  return (
    <div class="stack">
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
        <OrderOfWork canal={canal} instruments={plan.tray_list.map((item) => item.instrument)} />
      ) : (
        <>
          <TrayList items={plan.tray_list} />
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
          <TrayOrder plan={plan} shared={shared} />
        </>
      )}
    </div>
  )
}
