import { useState } from 'preact/hooks'
import type { Chair } from '@/store/chair/chair'
import { words } from '@/words/en'
import { saidOf } from './said'

const SHOWN = 30 // enough to see what led here; the record shows all

/** What was done, the latest first; what was taken back or did not fit stays, marked. */
export function DoneList({ chair }: { chair: Chair }) {
  const [open, setOpen] = useState(false)
  const latest = [...chair.events].reverse().slice(0, SHOWN)
  if (latest.length === 0) return null
  const unsent = new Set(chair.waiting.map((entry) => entry.event.id))
  return (
    <details class="done-list" aria-label={words.chair.course} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.chair.course}</summary>
      {open && (
        <ol>
          {latest.map((event) => (
            <li key={event.id} data-undone={chair.course.undone.has(event.id) || undefined}>
              <b>{event.canal}</b> {saidOf(chair, event)}
              {chair.course.outOfCourse[event.id] && (
                <span class="small strong">
                  {' '}
                  {words.chair.outOfCourse}: {words.chair.why[chair.course.outOfCourse[event.id] ?? '']}
                </span>
              )}
              {unsent.has(event.id) && <span class="small strong"> {words.newPlan.unsent}</span>}
              {event.notChecked && (
                <span class="small strong">
                  {' '}
                  {words.chair.notCheckedSays}: {words.chair.notChecked[event.notChecked]}
                </span>
              )}
            </li>
          ))}
        </ol>
      )}
    </details>
  )
}
