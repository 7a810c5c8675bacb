import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { CanalState } from '@/api/shapes'
import { adviceIn } from '@/panels/emergency/at-hand'
import { FirstSteps } from '@/panels/emergency/first-steps'
import { TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import type { SignName } from '@/parts/signs'
import { StepAnswers } from '@/parts/step-answers'
import type { Chair } from '@/store/chair/chair'
import { membership } from '@/store/session/session'
import type { CanalProgress } from '@/walk/course'
import type { EventOf } from '@/walk/course-event'
import { words } from '@/words/en'
import { PlanAgain } from './plan-again'

const SIGNS: Partial<Record<CanalState, SignName>> = {
  finished: 'approved',
  not_released: 'returned',
  waits: 'waiting',
}

type Cause = keyof typeof words.chair.causes

interface Props {
  chair: Chair
  canal: string
  course: CanalProgress
  picture: ComponentChildren
}

/** A canal that is not to be worked now: why, and who lets it go on. */
export function Withheld({ chair, canal, course, picture }: Props) {
  const says = {
    past_stop: words.chair.pastStop,
    paused: `${words.card.pausedFor[pausedFor(chair, canal)] ?? ''} ${words.chair.paused}`,
    to_plan: course.toPlan ? words.lengthAgain.due : words.chair.toPlan,
    to_check: words.chair.toCheck,
    finished: words.chair.finished,
    open: '',
    hold_point: '',
    waits: course.waitsFor.map(({ says }) => says).join(' '),
    not_released: notReleasedSays(chair, canal),
  }[course.state]
  const answer = (cause: Cause) => void chair.record(canal, '', { kind: 'answer', asks: course.askedBy ?? '', cause })
  return (
    <section class="now-card" aria-label={words.card.now(canal)}>
      <h2 class="now-where">
        <b>{canal}</b>
      </h2>
      <Notice sign={SIGNS[course.state] ?? 'stop'}>{says}</Notice>
      {course.held === 'paused' && <FirstSteps advice={adviceIn(chair)} about="pause" what={pausedFor(chair, canal)} />}
      {course.held === 'past_stop' && (
        <StepAnswers also="two">
          {(Object.keys(words.chair.causes) as Cause[]).map((cause) => (
            <button key={cause} type="button" class="button answer" onClick={() => answer(cause)}>
              {words.chair.causes[cause]}
            </button>
          ))}
        </StepAnswers>
      )}
      {course.state === 'to_plan' && <PlanAgain chair={chair} course={course} />}
      {(course.held === 'paused' || course.held === 'to_check') && <Resume chair={chair} canal={canal} />}
      {picture}
    </section>
  )
}

/** Why a supervisor's decision leaves the canal out: the remark on it, or the canal it ends in one with. */
function notReleasedSays(chair: Chair, canal: string): string {
  const decision = chair.events.findLast((event): event is EventOf<'release'> => event.kind === 'release')
  const left = decision?.payload.not_released.find((leftOut) => leftOut.canal === canal)
  return left?.joins ? words.hold.partnerReturned(left.joins) : words.hold.returned(left?.remark ?? '')
}

export function pausedFor({ events, course }: Chair, canal: string): string {
  const paused = events.filter((event) => event.kind === 'pause')
  const last = paused.findLast(({ id, canal: of }) => of === canal && !course.undone.has(id))
  return last?.payload.what ?? 'other'
}

/** Only a supervisor lets the work go on, and says why. */
export function Resume({ chair, canal }: { chair: Chair; canal: string }) {
  const [reason, setReason] = useState('')
  if (membership.value?.role !== 'supervisor') return null
  return (
    <div class="stack">
      <TextField label={words.chair.reason} value={reason} onInput={setReason} rows={2} />
      <button
        type="button"
        class="button main"
        disabled={!reason.trim()}
        onClick={() => void chair.record(canal, '', { kind: 'resume', reason })}
      >
        {words.chair.resume}
      </button>
    </div>
  )
}
