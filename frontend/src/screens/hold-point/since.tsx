import type { EventShown } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import { sinceLastWord } from '@/store/chair/hold'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import '@/parts/list.css'

/** What was done in the canal since the last word on it: each step with its depth against the stop. */
export function Since({ chair, canal }: { chair: Chair; canal: string }) {
  const done = sinceLastWord(chair, canal).filter(
    ({ id, told }) => told.kind === 'step' && !chair.course.undone.has(id) && !chair.course.outOfCourse[id],
  )
  return (
    <section class="stack close">
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
  const step = plan.canals.find((one) => one.canal === canal)?.run_sheet.nodes[node]
  if (step?.kind !== 'do') return node
  const named = plan.tray_list.find((item) => item.instrument.key === step.instrument)?.instrument.name
  return named ?? step.instrument ?? words.order.action(step.action)
}

function exitOf({ told }: EventShown): string {
  return told.kind === 'step' ? (words.hold.exits[told.exit] ?? told.exit) : ''
}

/** The depth that was felt, against the stop that the screen showed. */
function depthOf({ told }: EventShown): string {
  if (told.kind !== 'step' || told.depth_um == null) return ''
  const stop = told.stop_um != null && told.stop_um !== told.depth_um ? ` / ${mm(told.stop_um / 1000)}` : ''
  return `${mm(told.depth_um / 1000)}${stop}`
}
