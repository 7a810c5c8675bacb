import { mm } from '@/parts/millimetres'
import type { Chair } from '@/store/chair'
import type { Happened } from '@/walk/happened'
import { words } from '@/words/en'

const SHOWN = 30 // enough to see what led here; the record shows all

/** What was done, the latest first; what was taken back or did not fit stays, marked. */
export function DoneList({ chair }: { chair: Chair }) {
  const latest = [...chair.events].reverse().slice(0, SHOWN)
  if (latest.length === 0) return null
  return (
    <details class="done-list">
      <summary>{words.chair.course}</summary>
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
          </li>
        ))}
      </ol>
    </details>
  )
}

function saidOf({ plan }: Chair, { kind, canal, node, body }: Happened): string {
  if (kind === 'emergency') return `${words.chair.kind.emergency}: ${words.chair.emergencies[String(body.what)]}`
  if (kind !== 'step') return [words.chair.kind[kind], body.exit, body.reason].filter(Boolean).join(' ')
  const step = plan.canals.find((one) => one.canal === canal)?.run_sheet.nodes[node]
  const what = step?.kind === 'do' ? (step.instrument ?? words.order.action(step.action)) : node
  const depth = typeof body.depth_um === 'number' ? ` ${mm(body.depth_um / 1000)}` : ''
  return `${what}: ${String(body.exit)}${depth}`
}
