import { useState } from 'preact/hooks'
import type { Plan } from '@/api/shapes'
import { AfterDrawn } from '@/parts/after-drawn'
import { Choice, Tick } from '@/parts/fields'
import { Known } from '@/parts/known'
import { TouchHint } from '@/parts/rationale/why'
import { words } from '@/words/en'
import { DepthBoard } from './depth-board'
import { MomentSays } from './moment'
import { atTray, type Moment, ofCanal, progressAt } from './moments'
import { Scrubber } from './scrubber'
import type { BoardCanal } from './shape'
import { coronalStops } from './shape'

interface Props {
  plan: Plan
  before: Plan | undefined
  picked: string | undefined
  onPick: (canal: string) => void
  beside: preact.ComponentChildren
  /** Whether expected depths are shown; in the clinic they are off until asked for. */
  expected: boolean
  onExpected: (on: boolean) => void
}

const TRAY = 'tray'

/** The depth board with its canals to choose from, and stepping through the work of one canal or of the tray. */
export function DepthsView({ plan, before, picked, onPick, beside, expected, onExpected }: Props) {
  const [tray, setTray] = useState(false)
  const [stopped, setStopped] = useState<number>()
  const canals = expected ? plan.canals : plan.canals.map((c) => ({ ...c, expectation: null }))
  const moments: Moment[] = tray ? atTray(canals, plan.tray) : canals.filter((c) => c.canal === picked).flatMap(ofCanal)
  const whole = moments.length + 1
  const at = Math.min(stopped ?? whole, whole)
  const progress = moments.length > 0 ? progressAt(moments, at) : undefined
  const choose = (key: string) => {
    setTray(key === TRAY)
    setStopped(undefined)
    if (key !== TRAY) onPick(key)
  }
  const several = plan.canals.length > 1
  const stepped = canals.some((c) => c.expectation)
  return (
    <div class="plan-depths">
      <div class="plan-board">
        {plan.setting === 'clinic' && <Tick label={words.expected.show} checked={expected} onChange={onExpected} />}
        {moments.length > 0 && <MomentSays plan={plan} moments={moments} at={at} />}
        <DepthBoard
          canals={canals}
          coronal={coronalStops(plan.canals, plan.stop_table)}
          before={before?.canals}
          picked={tray ? progress?.now?.canal : picked}
          onPick={choose}
          progress={progress}
          cautions={plan.cautions}
          nameOf={(key) => plan.tray_list.find((item) => item.instrument.key === key)?.instrument.name ?? key}
          silhouettes={new Map(plan.tray_list.map((item) => [item.instrument.key, item.outline]))}
        />
        {moments.length > 0 && <Scrubber steps={moments.length} at={at} onMove={setStopped} />}
        {several && (
          <div class="pick-canal">
            <Choice
              label={words.views.canal}
              value={tray ? TRAY : picked}
              options={[
                ...(stepped ? [{ value: TRAY, says: words.views.tray }] : []),
                ...plan.canals.map((c) => ({ value: c.canal, says: c.canal })),
              ]}
              onChoose={choose}
            />
          </div>
        )}
        {stepped && <AboutEstimate canals={canals} />}
        <TouchHint />
      </div>
      <div class="stack plan-beside">
        <AfterDrawn>{beside}</AfterDrawn>
      </div>
    </div>
  )
}

/** What the estimate is worth: that the hand wins, where the widths are from, and where it is weak. */
function AboutEstimate({ canals }: { canals: readonly BoardCanal[] }) {
  const estimated = canals.flatMap(({ canal, expectation }) => (expectation ? [{ canal, ...expectation }] : []))
  const initialShape = new Map(estimated.map((estimate) => [estimate.initial_shape.source, estimate.initial_shape]))
  const narrow = estimated.filter((estimate) => estimate.narrows).map((estimate) => estimate.canal)
  const bent = estimated
    .filter((estimate) => estimate.steps.some((step) => step.as_if_straight))
    .map((estimate) => estimate.canal)
  return (
    <div>
      {bent.length > 0 && <p class="small">{words.expected.bent(bent)}</p>}
      <p class="small soft">{words.expected.hint}</p>
      <details>
        <summary class="small">{words.expected.about}</summary>
        <div class="stack close small">
          <p class="soft">{words.expected.usually}</p>
          {[...initialShape.values()].map(({ source, know }) => (
            <div key={source}>
              <p class="soft">{words.expected.initialShape(source)}</p>
              <Known know={know} />
            </div>
          ))}
          {narrow.length > 0 && <p class="soft">{words.expected.narrows(narrow)}</p>}
        </div>
      </details>
    </div>
  )
}
