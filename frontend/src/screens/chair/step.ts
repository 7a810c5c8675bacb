import type { CanalPlan, SheetStep } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import type { CanalProgress } from '@/walk/course'
import type { PayloadOf } from '@/walk/course-event'
import { irrigantAt } from '@/walk/irrigants'

/** Where the tip of the instrument in hand was put; nothing before it was touched. */
export interface Tip {
  readonly depth_um: number | undefined
  readonly onDepth: (depth_um: number | undefined) => void
}

export interface StepProps {
  chair: Chair
  canal: CanalPlan
  course: CanalProgress
  node: SheetStep
}

type Step = PayloadOf<'step'>
export type More = Partial<Omit<Step, 'kind' | 'exit'>>

export const FELT_MS = 40 // just long enough to be felt through a glove

/** Leaves the present step by one of its exits. */
export function leaveBy({ chair, canal, course, node }: StepProps) {
  return (exit: Step['exit'], more: More = {}) => {
    navigator.vibrate?.(FELT_MS)
    const irrigant = irrigantAt(chair.course, node)
    const numbers = { depth_um: null, stop_um: course.walk.stop(), irrigant, volume_ml: node.volume_ml }
    void chair.record(canal.canal, node.id, { kind: 'step', exit, ...numbers, ...more })
  }
}
