import { useEffect, useState } from 'preact/hooks'
import { Trouble } from '@/panels/emergency/trouble'
import { compare, stopChanges } from '@/parts/difference/compare'
import { DifferenceView } from '@/parts/difference/difference-view'
import { Notice } from '@/parts/notice'
import { useVersion, useVersions } from '@/store/cache/plans'
import type { Chair } from '@/store/chair/chair'
import type { CourseEvent } from '@/walk/course-event'
import { words } from '@/words/en'
import { saidOf } from './said'
import './new-plan.css'

interface Props {
  chair: Chair
  /** Hash of the plan that was worked by on this phone until now. */
  older: string
  onAcknowledge: () => void
}

const SLIP_MS = 700 // a finger on its way to an answer of the older plan has not read what stands under it now

/** Another plan is in force: which, what it moves, what does not count. Nothing is answered before it was read. */
export function NewPlan({ chair, older, onAcknowledge }: Props) {
  const { number } = chair.version
  const listed = useVersions(chair.caseId).value?.find((version) => version.hash === older)
  const before = useVersion(listed?.id).value
  const late = lateOf(chair)
  const [ready, setReady] = useState(false)
  useEffect(() => {
    globalThis.scrollTo?.(0, 0)
    const timer = setTimeout(() => setReady(true), SLIP_MS)
    return () => clearTimeout(timer)
  }, [])
  // As after what came late was planned in: nothing to set anew and nothing to say.
  const nothing = before !== undefined && late.length === 0 && compare(before.plan, chair.plan).length === 0
  useEffect(() => {
    if (nothing) onAcknowledge()
  }, [nothing])
  return (
    <div class="chair">
      <section class="new-plan stack" role="alert" aria-label={words.newPlan.title(number)}>
        <h2>{words.newPlan.title(number)}</h2>
        <p class="strong">{words.newPlan.instead(listed?.number, number)}</p>
        <Late chair={chair} late={late} />
        <Stops before={before?.plan} after={chair.plan} />
      </section>
      <section class="dock" aria-label={words.chair.dock}>
        <button type="button" class="button main" disabled={!ready} onClick={onAcknowledge}>
          {words.newPlan.go(number)}
        </button>
        <Trouble chair={chair} canal="" pausable={false} />
      </section>
    </div>
  )
}

/** Canal by canal, each rubber stop as it was and as it is. */
function Stops({ before, after }: { before: Chair['plan'] | undefined; after: Chair['plan'] }) {
  if (!before) return <Notice sign="caution">{words.newPlan.notHere}</Notice>
  const changes = stopChanges(before, after)
  if (changes.length === 0) return <p>{words.newPlan.noStop}</p>
  return (
    <div class="stack close new-plan-stops">
      <h3>{words.newPlan.stops}</h3>
      <DifferenceView changes={changes} />
    </div>
  )
}

/** What was recorded by an older plan since this one is in force. */
function lateOf({ events, course }: Chair): readonly CourseEvent[] {
  const since = events.findLastIndex((event) => event.kind === 'replan')
  return events.slice(since + 1).filter((event) => course.outOfCourse[event.id] === 'other_plan')
}

function Late({ chair, late }: { chair: Chair; late: readonly CourseEvent[] }) {
  if (late.length === 0) return null
  return (
    <div class="stack close">
      <p>{words.newPlan.late}</p>
      <ul>
        {late.map((event) => (
          <li key={event.id}>
            <b>{event.canal}</b> {saidOf(chair, event)}
          </li>
        ))}
      </ul>
    </div>
  )
}
