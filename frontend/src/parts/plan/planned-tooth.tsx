import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Caution, Plan } from '@/api/shapes'
import { AfterDrawn } from '@/parts/after-drawn'
import { Cautions } from '@/parts/cautions'
import { AboutEstimate, DepthsView } from '@/parts/depth-board/depths-view'
import { DifficultyCard } from '@/parts/difficulty'
import { Fold } from '@/parts/fold'
import { AtTheTray } from '@/parts/order/at-the-tray'
import { TouchHint, WithReasons } from '@/parts/rationale/why'
import { StopTable } from '@/parts/stop-table/stop-table'
import { Tooth } from '@/parts/tooth/tooth'
import { words } from '@/words/en'
import { PlannedCanal } from './planned-canal'
import './planned-tooth.css'

interface Props {
  plan: Plan
  /** The version it is compared with: its outline lies over the board. */
  before?: Plan | undefined
  picked: string | undefined
  onPick: (canal: string) => void
  /** What belongs to the columns of the board, right under it. */
  under?: ComponentChildren
  /** What has to be read first, under the board. */
  notices?: ComponentChildren
  /** What can be chosen for the selected canal, or led to from it. */
  choose?: ComponentChildren
  /** What else there is: choices for the tooth, or remarks. */
  beside: ComponentChildren
  /** What can be done about a caution here. */
  act?: ((caution: Caution) => ComponentChildren) | undefined
  /** How far the work has come, by canal, in a word. */
  states?: ReadonlyMap<string, string> | undefined
}

/** One plan on its board: the selected canal alone, then what concerns the whole tooth, folded. */
export function PlannedTooth({ plan, before, picked, onPick, under, notices, choose, beside, act, states }: Props) {
  // A prediction in sight while somebody treats a patient would lead the hand.
  const [expected, setExpected] = useState(plan.setting !== 'clinic')
  const canal = plan.canals.find((c) => c.canal === picked)
  return (
    <WithReasons plan={plan}>
      <Tooth
        board={
          <>
            <DepthsView
              plan={plan}
              before={before}
              picked={picked}
              onPick={onPick}
              expected={expected}
              onExpected={setExpected}
              states={states}
            />
            {under}
          </>
        }
      >
        {notices}
        {canal && (
          <PlannedCanal key={canal.canal} plan={plan} canal={canal} expected={expected} act={act}>
            {choose}
          </PlannedCanal>
        )}
        <AfterDrawn>
          <Fold says={words.views.stops}>
            <Stops plan={plan} />
          </Fold>
          <Fold says={<CautionsSay plan={plan} />}>
            {plan.difficulty && <DifficultyCard difficulty={plan.difficulty} />}
            <Cautions plan={plan} act={act} />
          </Fold>
          <Fold says={words.views.atTheTray}>
            <AtTheTray plan={plan} />
          </Fold>
          {beside}
          {expected && <AboutEstimate canals={plan.canals} />}
          <TouchHint />
        </AfterDrawn>
      </Tooth>
    </WithReasons>
  )
}

function CautionsSay({ plan }: { plan: Plan }) {
  const grave = plan.cautions.filter((c) => c.severity !== 'note' && c.overridden == null).length
  return (
    <>
      {words.views.cautions}
      {grave > 0 && <span class="fold-mark">{grave}</span>}
    </>
  )
}

function Stops({ plan }: { plan: Plan }) {
  return (
    <div class="stack all-stops">
      <p class="only-on-paper strong">{words.stops.paper(plan.tooth.iso, plan.technique, plan.kit)}</p>
      <StopTable rows={plan.stop_table} canals={plan.canals} />
      <p class="small">{plan.notice}</p>
      <button type="button" class="button not-on-paper" onClick={() => print()}>
        {words.stops.print}
      </button>
    </div>
  )
}
