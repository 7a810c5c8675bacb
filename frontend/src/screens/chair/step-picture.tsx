import type { CanalPlan } from '@/api/shapes'
import { beforeStep, instrumentOf } from '@/panels/emergency/at-hand'
import { CanalPicture } from '@/parts/canal-picture/canal-picture'
import { depthSays } from '@/parts/canal-picture/strip'
import type { Chair } from '@/store/chair/chair'
import { type ExpectedRest, expectedNow } from '@/store/chair/expected'
import { wallOf } from '@/store/chair/wall'
import { hand } from '@/store/device/preferences'
import { words } from '@/words/en'
import { Canals } from './canals'
import type { Tip } from './step'

interface Props {
  chair: Chair
  canals: readonly CanalPlan[]
  canal: CanalPlan
  ahead: ExpectedRest
  /** Where the tip is put; without it nothing is asked. */
  tip: Tip | undefined
  onTurn: (canal: string) => void
}

/** The canal in hand as it is now, beside the others; where a depth may be answered, with the strip to put it on. */
export function StepPicture({ chair, canals, canal, ahead, tip, onTurn }: Props) {
  const course = chair.course.canals[canal.canal]
  const walk = course?.walk
  const node = walk?.node.kind === 'do' ? walk.node : undefined
  const item = chair.plan.tray_list.find(({ instrument }) => instrument.key === node?.instrument)
  const name = instrumentOf(chair, node?.instrument ?? null)?.name ?? ''
  const isDue = course?.state === 'open' && beforeStep(chair, canal.canal, course) === undefined
  const asks = tip && isDue && node && 'short' in node.exits
  const stop_um = (node?.target ? walk?.stop() : node?.needle_at_most_um) ?? null
  const expected = chair.plan.setting === 'clinic' ? undefined : expectedNow(ahead, canal.canal, walk)
  return (
    <>
      {asks && (
        <p class="strong" aria-hidden="true">
          {depthSays(tip.depth_um, stop_um, expected) || words.depth.drag}
        </p>
      )}
      <CanalPicture
        canal={{
          canal: canal.canal,
          wall: wallOf(chair, canal, ahead),
          end_mm: canal.end_mm,
          stop_um,
          deepest_mm: Math.max(0, ...canals.map(({ end_mm }) => end_mm ?? 0)),
        }}
        instrument={item && { name, outline: item.outline }}
        expected={expected}
        depth_um={tip?.depth_um}
        last_um={(node && walk?.last(node.id)) ?? null}
        onDepth={asks ? tip.onDepth : undefined}
        hand={hand.value}
      >
        {(axis, height) => (
          <Canals
            chair={chair}
            canals={canals}
            current={canal.canal}
            onTurn={onTurn}
            ahead={ahead}
            axis={axis}
            height={height}
          />
        )}
      </CanalPicture>
    </>
  )
}
