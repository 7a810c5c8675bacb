import { useState } from 'preact/hooks'
import type { CanalPlan } from '@/api/shapes'
import { DepthBoard } from '@/parts/depth-board/depth-board'
import { coronalStops } from '@/parts/depth-board/shape'
import { Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { type ExpectedRest, insertions } from '@/store/chair/expected'
import { about, mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './bands.css'

interface Props {
  chair: Chair
  ahead: ExpectedRest
  canal: CanalPlan
}

const GLOVED_PX = 56

/** After the answer, never before it: how the depth just recorded lies against what was expected. Not in the clinic. */
export function LastDepth({ chair, ahead, canal: { canal } }: Props) {
  const last = ahead.canals.find((rest) => rest.canal === canal)?.last
  const walk = chair.course.canals[canal]?.walk
  const made = walk && insertions(walk).at(-1)
  if (chair.plan.setting === 'clinic' || !last || last.node !== made?.node || last.pass_number !== made.pass_number)
    return null
  // Taken back and told anew, the server has not judged it yet.
  if (made.depth_um !== null && made.depth_um !== Math.round(last.depth_mm * 1000)) return null
  const node = walk?.sheet.nodes[last.node]
  const key = node?.kind === 'do' ? node.instrument : null
  const name = chair.plan.tray_list.find((item) => item.instrument.key === key)?.instrument.name ?? key ?? ''
  const outside = last.felt === 'as_expected' && (last.depth_mm < last.low_mm || last.depth_mm > last.high_mm)
  return (
    <output class="last-depth" data-felt={last.felt}>
      <b>{words.bands.stoppedAt(name, mm(last.depth_mm))}</b>{' '}
      <span class="small">
        {words.expected.band(about(last.low_mm), about(last.high_mm))}
        {last.as_if_straight && `, ${words.expected.asIfStraight}`}
      </span>{' '}
      {words.bands.felt[outside ? 'outside' : last.felt]}
    </output>
  )
}

/** The depth board as far as the work has come, what was recorded as ticks, and what is expected of the rest. */
export function BandsBoard({ chair: { plan }, ahead, canal }: Props) {
  const [expected, setExpected] = useState(plan.setting !== 'clinic')
  const [open, setOpen] = useState(false)
  const of = (name: string) => ahead.canals.find((rest) => rest.canal === name)
  const canals = plan.canals.map((planned) => ({
    ...planned,
    expectation: expected ? (of(planned.canal)?.expectation ?? null) : null,
  }))
  const done = new Map(expected ? ahead.canals.map((rest) => [rest.canal, rest.done]) : [])
  return (
    <details class="bands-board" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.bands.title}</summary>
      {open && (
        <div class="stack close">
          {plan.setting === 'clinic' && <Tick label={words.expected.show} checked={expected} onChange={setExpected} />}
          <div class="board-room">
            <DepthBoard
              canals={canals}
              coronal={coronalStops(plan.canals, plan.stop_table)}
              picked={canal.canal}
              progress={expected ? { done, now: undefined } : undefined}
              cautions={plan.cautions}
              nameOf={(key) => plan.tray_list.find((item) => item.instrument.key === key)?.instrument.name ?? key}
              touch_px={GLOVED_PX}
            />
          </div>
          {expected && <Whence ahead={ahead} canal={canal.canal} />}
        </div>
      )}
    </details>
  )
}

function Whence({ ahead, canal }: { ahead: ExpectedRest; canal: string }) {
  const few = ahead.canals.find((rest) => rest.canal === canal)?.expectation.few_agree
  return (
    <>
      {few && <Notice sign="caution">{words.bands.few}</Notice>}
      {ahead.from !== 'server' && (
        <Notice sign="note">
          {ahead.at === undefined ? words.bands.fromPlan : words.bands.since(words.when(ahead.at))}
        </Notice>
      )}
      <p class="small soft">{words.expected.hint}</p>
    </>
  )
}
