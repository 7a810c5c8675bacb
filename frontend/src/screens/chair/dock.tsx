import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { CanalPlan } from '@/api/shapes'
import { beforeStep } from '@/panels/emergency/at-hand'
import { Trouble } from '@/panels/emergency/trouble'
import { StepAnswers } from '@/parts/step-answers'
import type { Chair } from '@/store/chair/chair'
import { hand } from '@/store/device/preferences'
import { membership } from '@/store/session/session'
import type { CanalProgress } from '@/walk/course'
import { Answers } from './answers'
import { EndingAnswers, isOver } from './ending'
import { AskForSignOff } from './hold-point'
import { LookFirst, TakeNew } from './look-first'
import { NotSure } from './not-sure'
import type { Tip } from './step'
import { UndoBar } from './undo-bar'
import './dock.css'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  canal: CanalPlan
  course: CanalProgress
  tip: Tip
  /** The way to the canal that goes on, where this one cannot. */
  onward?: ComponentChildren
  onTurnedBack: () => void
}

/** What is answered with, at the foot of the screen: each answer and way out in its place, whatever the step. */
export function Dock({ chair, canal, course, tip, onward, onTurnedBack }: Props) {
  return (
    <DockFrame>
      <UndoBar chair={chair} canal={canal.canal} onTurnedBack={onTurnedBack} />
      <Due chair={chair} canal={canal} course={course} tip={tip} onward={onward} />
      <fieldset class="ways-out" aria-label={words.chair.waysOut}>
        <NotSure chair={chair} canal={canal} course={course} />
        <Trouble chair={chair} canal={canal.canal} pausable={course.held === null} />
      </fieldset>
    </DockFrame>
  )
}

/** After closing there is nothing to answer; what goes wrong is told all the same. */
export function ClosedDock({ chair, canal }: Pick<Props, 'chair' | 'canal'>) {
  return (
    <DockFrame>
      <fieldset class="ways-out" aria-label={words.chair.waysOut}>
        <Trouble chair={chair} canal={canal.canal} pausable={false} />
      </fieldset>
    </DockFrame>
  )
}

/** Lies over the foot of the screen, and tells the screen how much of it that is. */
function DockFrame({ children }: { children: ComponentChildren }) {
  const frame = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const root = document.documentElement.style
    const tell = () => root.setProperty('--dock-height', `${frame.current?.offsetHeight ?? 0}px`)
    tell()
    const grown = new ResizeObserver(tell)
    if (frame.current) grown.observe(frame.current)
    return () => {
      grown.disconnect()
      root.removeProperty('--dock-height')
    }
  }, [])
  return (
    <section class="dock" aria-label={words.chair.dock} data-hand={hand.value} ref={frame}>
      <div class="dock-grid">{children}</div>
    </section>
  )
}

/** What this step wants now: an instrument looked at, a new one, or its answers. */
function Due({ chair, canal, course, tip, onward }: Omit<Props, 'onTurnedBack'>) {
  const { node } = course.walk
  // The card of the step is not shown: a sign-off would be asked for on what nobody sees.
  if (chair.course.missing.length > 0) return null
  if (isOver(chair)) return <EndingAnswers caseId={chair.caseId} />
  const asks = course.state === 'hold_point' && membership.value?.role !== 'supervisor'
  if (asks && node.kind === 'do') return <AskForSignOff chair={chair} canal={canal.canal} node={node} onward={onward} />
  if (course.state !== 'open' || node.kind === 'end') return onward ? <StepAnswers>{onward}</StepAnswers> : null
  const before = beforeStep(chair, canal.canal, course)
  switch (before?.what) {
    case 'new':
      return <TakeNew chair={chair} instrument={before.instrument} why={before.why} />
    case 'look':
      return <LookFirst chair={chair} instruments={before.instruments} />
    case 'motor':
      return null
    default:
      return <Answers chair={chair} canal={canal} course={course} node={node} tip={tip} />
  }
}
