import { useState } from 'preact/hooks'
import type { CanalPlan, SheetStep } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { pathsOf } from '@/parts/rationale/paths'
import { Sheet } from '@/parts/rationale/sheet'
import type { Chair } from '@/store/chair/chair'
import { shownEvent } from '@/store/chair/hold'
import type { CanalProgress } from '@/walk/course'
import { words } from '@/words/en'
import { leaveBy } from './step'

interface Props {
  chair: Chair
  canal: CanalPlan
  course: CanalProgress
}

/** An answer like the others: ask somebody, read why, or let the canal rest. */
export function NotSure({ chair, canal, course }: Props) {
  const [open, setOpen] = useState(false)
  const close = () => setOpen(false)
  return (
    <>
      <button type="button" class="button answer" onClick={() => setOpen(true)}>
        {words.card.notSure}
      </button>
      {open && (
        <Sheet title={words.card.askTitle} onClose={close}>
          <Help chair={chair} canal={canal} course={course} onDone={close} />
        </Sheet>
      )}
    </>
  )
}

function Help({ chair, canal, course, onDone }: Props & { onDone: () => void }) {
  const { node } = course.walk
  const { asking } = course
  const unsent = chair.waiting.some((entry) => entry.event.id === asking)
  const comes = shownEvent(chair, course.coming)
  const works = course.state === 'open' && node.kind === 'do'
  return (
    <>
      {comes && <Notice sign="approved">{words.hold.comes(comes.actor.name)}</Notice>}
      {asking ? (
        <Notice sign={unsent ? 'stop' : 'waiting'}>{unsent ? words.card.askedNotSent : words.card.asked}</Notice>
      ) : (
        <button
          type="button"
          class="button main"
          onClick={() => void chair.record(canal.canal, node.id, { kind: 'ask', note: '' })}
        >
          {words.card.ask}
        </button>
      )}
      {works && 'short' in node.exits && (
        <button
          type="button"
          class="button answer"
          onClick={() => {
            leaveBy({ chair, canal, course, node })('short')
            onDone()
          }}
        >
          {words.chair.noDepth}
        </button>
      )}
      {course.held === null && (
        <button
          type="button"
          class="button answer"
          onClick={() => {
            void chair.record(canal.canal, '', { kind: 'pause', what: 'not_sure', reason: '' })
            onDone()
          }}
        >
          {words.card.pauseHere}
        </button>
      )}
      {node.kind === 'do' && <Why chair={chair} canal={canal} node={node} />}
    </>
  )
}

/** What the step is for and why its stop is where it is. */
function Why({ chair, canal, node }: Pick<Props, 'chair' | 'canal'> & { node: SheetStep }) {
  const row = chair.plan.stop_table.find(({ instrument }) => instrument.key === node.instrument)
  const stop = row?.stops.find((stop) => stop.canal === canal.canal && stop.stop_mm * 1000 === node.stop_um)
  const rationales = stop && pathsOf(stop.why).map((path) => canal.rationales.find(({ of }) => of === path))
  const rule = rationales?.find(Boolean)?.rule
  if (!node.say && !rule) return null
  return (
    <section class="stack close">
      <h3>{words.card.why}</h3>
      {node.say && <p>{node.say}</p>}
      {rule && <p>{rule}</p>}
    </section>
  )
}
