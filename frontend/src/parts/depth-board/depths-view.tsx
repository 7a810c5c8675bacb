import { useState } from 'preact/hooks'
import type { Plan } from '@/api/shapes'
import { Tick } from '@/parts/fields'
import { Known } from '@/parts/known'
import { words } from '@/words/en'
import { DepthBoard } from './depth-board'
import { MomentSays, momentSays } from './moment'
import { atTray, type Moment, ofCanal, progressAt } from './moments'
import { Scrubber } from './scrubber'
import type { BoardCanal } from './shape'
import { coronalStops } from './shape'

interface Props {
  plan: Plan
  before: Plan | undefined
  picked: string | undefined
  onPick: (canal: string) => void
  /** Whether expected depths are shown; in the clinic they are off until asked for. */
  expected: boolean
  onExpected: (on: boolean) => void
  /** How far the work has come, by canal, in a word. */
  states?: ReadonlyMap<string, string> | undefined
}

/** The depth board, and under it stepping through the insertions in the selected canal or, as at the tray, in all. */
export function DepthsView({ plan, before, picked, onPick, expected, onExpected, states }: Props) {
  const [tray, setTray] = useState(false)
  const [stopped, setStopped] = useState<number>()
  const canals = expected ? plan.canals : plan.canals.map((c) => ({ ...c, expectation: null }))
  const moments: Moment[] = tray ? atTray(canals, plan.tray) : canals.filter((c) => c.canal === picked).flatMap(ofCanal)
  const whole = moments.length + 1
  const at = Math.min(stopped ?? whole, whole)
  const progress = moments.length > 0 ? progressAt(moments, at) : undefined
  const several = plan.canals.filter((c) => c.expectation).length > 1
  const pick = (canal: string) => {
    setTray(false)
    setStopped(undefined)
    onPick(canal)
  }
  const move = (to: number) => {
    setStopped(to)
    const canal = moments[to - 1]?.canal
    if (canal && canal !== picked) onPick(canal)
  }
  return (
    <>
      <DepthBoard
        canals={canals}
        coronal={coronalStops(plan.canals, plan.stop_table)}
        before={before?.canals}
        picked={picked}
        onPick={pick}
        progress={progress}
        cautions={plan.cautions}
        nameOf={(key) => plan.tray_list.find((item) => item.instrument.key === key)?.instrument.name ?? key}
        silhouettes={new Map(plan.tray_list.map((item) => [item.instrument.key, item.outline]))}
        states={states}
      />
      {moments.length > 0 && (
        <Scrubber steps={moments.length} at={at} says={momentSays(plan, moments, at)} onMove={move} />
      )}
      <div class="row wrap apart not-on-paper">
        {moments.length > 0 && <MomentSays plan={plan} moments={moments} at={at} />}
        {plan.setting === 'clinic' && <Tick label={words.expected.show} checked={expected} onChange={onExpected} />}
        {expected && several && (
          <Tick
            label={words.views.tray}
            checked={tray}
            onChange={(on) => {
              setTray(on)
              setStopped(undefined)
            }}
          />
        )}
      </div>
    </>
  )
}

/** What the estimate is worth: that the hand wins, where the widths are from, and where it is weak. */
export function AboutEstimate({ canals }: { canals: readonly BoardCanal[] }) {
  const estimated = canals.flatMap(({ canal, expectation }) => (expectation ? [{ canal, ...expectation }] : []))
  const initialShape = new Map(estimated.map((estimate) => [estimate.initial_shape.source, estimate.initial_shape]))
  const narrow = estimated.filter((estimate) => estimate.narrows).map((estimate) => estimate.canal)
  const bent = estimated
    .filter((estimate) => estimate.steps.some((step) => step.as_if_straight))
    .map((estimate) => estimate.canal)
  if (estimated.length === 0) return null
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
