import type { Running } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { useRunning } from '@/store/review'
import { words } from '@/words/en'

/** The chairs where work goes on: what is halted first, then what waits longest; nothing where nobody works. */
export function RunningWork() {
  const list = useRunning().value ?? []
  if (list.length === 0) return null
  return (
    <section class="stack">
      <h2>{words.worklist.atTheChair}</h2>
      <ul class="ledger">
        {list.map((one) => (
          <li key={one.case}>
            <RunningRow of={one} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function RunningRow({ of }: { of: Running }) {
  return (
    <a class="entry waiting-row" href={`/cases/${of.case}/chair`} data-halted={of.halted || undefined}>
      <span class="tooth-number">{of.tooth.iso}</span>
      <span class="grow">
        <b class="block">{of.patient_alias}</b>
        <span class="small soft one-line">{of.student.name}</span>
        <span class="small block">
          {of.canals.map(({ canal, state, hold_point }) => (
            <span key={canal} class="block">
              <b>{canal}</b> {hold_point ? words.worklist.waitsFor(hold_point) : words.chair.state[state]}
            </span>
          ))}
        </span>
      </span>
      <span class="waiting-side">
        {of.halted && (
          <span class="strong" data-severity="stop">
            <Sign name="stop" /> {words.worklist.halted}
          </span>
        )}
        {of.waiting_s !== null && <span class="small">{words.worklist.waits(of.waiting_s)}</span>}
      </span>
    </a>
  )
}
