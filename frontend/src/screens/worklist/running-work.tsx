import type { Running } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { useRunning } from '@/store/review'
import { words } from '@/words/en'
import { WaitsFor, whereTo } from './waits-for'

/** The chairs where work stands still after an emergency, or those where it goes on: what waits longest first. */
export function RunningWork({ halted }: { halted: boolean }) {
  const list = (useRunning().value ?? []).filter((one) => one.halted === halted)
  if (list.length === 0) return null
  return (
    <section class={halted ? 'stack halted-list' : 'stack'} role={halted ? 'alert' : undefined}>
      <h2>{halted ? words.worklist.emergencies : words.worklist.atTheChair}</h2>
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
  const { missing = [] } = of
  return (
    <a class="entry waiting-row" href={whereTo(of)} data-halted={of.halted || undefined}>
      <span class="tooth-number">{of.tooth.iso}</span>
      <span class="grow">
        <b class="block">{of.patient_alias}</b>
        <span class="small soft one-line">{of.student.name}</span>
        <span class="small block">
          {of.on_site && <span class="block">{words.visit.inRoom(of.on_site.name)}</span>}
          {of.check_due && <b class="block">{words.worklist.checkDue}</b>}
          {missing
            .filter((what) => what !== 'halted' && what !== 'closed')
            .map((what) => (
              <b key={what} class="block">
                {words.visit.missing[what]}
              </b>
            ))}
          {!missing.includes('closed') && of.canals.map((canal) => <WaitsFor key={canal.canal} of={canal} />)}
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
