import type { EventShown } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import { sinceLastSignOff } from '@/store/chair/hold'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import '@/parts/list.css'

/** What was done in the canal since the last sign-off on it: each step with its depth against the stop. */
export function Since({ chair, canal }: { chair: Chair; canal: string }) {
  const done = sinceLastSignOff(chair, canal).filter(
    ({ id, payload }) => payload.kind === 'step' && !chair.course.undone.has(id) && !chair.course.outOfCourse[id],
  )
  return (
    <section class="stack close" aria-label={words.hold.since}>
      <h2>{words.hold.since}</h2>
      {done.length === 0 && <p class="soft">{words.hold.nothingSince}</p>}
      <ol class="ledger">
        {done.map((event) => (
          <li key={event.id} class="figure row apart">
            <span>
              <b>{whatOf(chair, event)}</b> {exitOf(event)}
            </span>
            <span class="number">{depthOf(event)}</span>
          </li>
        ))}
      </ol>
    </section>
  )
}

function whatOf({ plan }: Chair, { canal, node }: EventShown): string {
  const step = plan.canals.find((planned) => planned.canal === canal)?.run_sheet.nodes[node]
  if (step?.kind !== 'do') return node
  const named = plan.tray_list.find((item) => item.instrument.key === step.instrument)?.instrument.name
  return named ?? step.instrument ?? words.order.action(step.action)
}

function exitOf({ payload }: EventShown): string {
  return payload.kind === 'step' ? (words.hold.exits[payload.exit] ?? payload.exit) : ''
}

/** The depth that was felt, against the stop that the screen showed. */
function depthOf({ payload }: EventShown): string {
  if (payload.kind !== 'step' || payload.depth_um == null) return ''
  const stop = payload.stop_um != null && payload.stop_um !== payload.depth_um ? ` / ${mm(payload.stop_um / 1000)}` : ''
  return `${mm(payload.depth_um / 1000)}${stop}`
}
