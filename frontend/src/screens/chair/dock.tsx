import type { CanalPlan } from '@/api/shapes'
import type { Chair } from '@/store/chair'
import { hand } from '@/store/hand'
import type { CanalCourse } from '@/walk/course'
import { Answers } from './answers'
import { beforeStep } from './at-hand'
import { LookFirst, TakeNew } from './look-first'
import { NotSure } from './not-sure'
import { Trouble } from './trouble'
import { UndoBar } from './undo-bar'
import './dock.css'

interface Props {
  chair: Chair
  canal: CanalPlan
  course: CanalCourse
}

/** What is answered with, at the foot of the screen: the answers under the thumb of the hand that was chosen. */
export function Dock({ chair, canal, course }: Props) {
  return (
    <div class="dock" data-hand={hand.value}>
      <UndoBar chair={chair} canal={canal.canal} />
      <div class="dock-grid">
        <Due chair={chair} canal={canal} course={course} />
        <div class="ways-out">
          <NotSure chair={chair} canal={canal} course={course} />
          <Trouble chair={chair} canal={canal.canal} pausable={course.held === null} />
        </div>
      </div>
    </div>
  )
}

/** What this step wants now: an instrument looked at, a new one, or its answers. */
function Due({ chair, canal, course }: Props) {
  const { node } = course.walk
  if (chair.course.missing.length > 0 || course.state !== 'open' || node.kind === 'end') return null
  const before = beforeStep(chair, canal.canal, course)
  switch (before?.what) {
    case 'new':
      return <TakeNew chair={chair} instrument={before.instrument} why={before.why} />
    case 'look':
      return <LookFirst chair={chair} instruments={before.instruments} />
    case 'motor':
      return null
    default:
      return <Answers chair={chair} canal={canal} course={course} node={node} />
  }
}
