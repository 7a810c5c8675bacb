import { useState } from 'preact/hooks'
import type { Caution, Plan } from '@/api/shapes'
import { useAfterDrawn } from '@/parts/after-drawn'
import { Cautions } from '@/parts/cautions'
import { DepthsView } from '@/parts/depth-board/depths-view'
import { DifficultyCard } from '@/parts/difficulty'
import { OrderView } from '@/parts/order/order-view'
import { RestsOn } from '@/parts/rationale/rests-on'
import { WithReasons } from '@/parts/rationale/why'
import { StopTable } from '@/parts/stop-table/stop-table'
import { Tabs, TabView } from '@/parts/tabs'
import { words } from '@/words/en'
import './plan-views.css'

interface Props {
  plan: Plan
  /** The version it is compared with: its outline lies over the board. */
  before?: Plan | undefined
  picked: string | undefined
  onPick: (canal: string) => void
  /** What stands beside or under the board: choices, or remarks. */
  beside: preact.ComponentChildren
  /** What can be done about a caution here. */
  act?: ((caution: Caution) => preact.ComponentChildren) | undefined
}

type View = 'depths' | 'stops' | 'order' | 'cautions' | 'why'

/** One plan in five views. */
export function PlanViews({ plan, before, picked, onPick, beside, act }: Props) {
  const [chosen, setChosen] = useState<View>('depths')
  const view = useAfterDrawn(chosen)
  // A prediction in sight while somebody treats a patient would lead the hand.
  const [expected, setExpected] = useState(plan.setting !== 'clinic')
  const grave = plan.cautions.filter((c) => c.severity !== 'note' && c.overridden == null).length
  const tabs = (['depths', 'stops', 'order', 'cautions', 'why'] as const).map((key) => ({
    key,
    label: words.views[key],
    ...(key === 'cautions' && grave > 0 ? { mark: <span class="tab-mark">{grave}</span> } : {}),
  }))
  return (
    <WithReasons plan={plan}>
      <Tabs name={words.views.name} tabs={tabs} current={chosen} onChoose={(key) => setChosen(key as View)} />
      <TabView tab={view}>
        {view === 'depths' && (
          <DepthsView
            plan={plan}
            before={before}
            picked={picked}
            onPick={onPick}
            beside={beside}
            expected={expected}
            onExpected={setExpected}
          />
        )}
        {view === 'stops' && <StopsView plan={plan} />}
        {view === 'order' && <OrderView plan={plan} picked={picked} onPick={onPick} expected={expected} />}
        {view === 'cautions' && (
          <>
            {plan.difficulty && <DifficultyCard difficulty={plan.difficulty} />}
            <Cautions plan={plan} act={act} />
          </>
        )}
        {view === 'why' && <RestsOn plan={plan} />}
      </TabView>
    </WithReasons>
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
