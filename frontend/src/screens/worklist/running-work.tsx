import type { Running, RunningList } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { WaitsFor, whereTo } from './waits-for'

type Group = keyof typeof words.worklist.groups

const BELONGS: Record<Group, (work: Running) => boolean> = {
  halted: (work) => work.halted,
  waits: (work) => !work.halted && work.waiting_s !== null,
  going: (work) => !work.halted && work.waiting_s === null,
}

/** The chairs of one group: those that stand still after an emergency, those that wait for a sign-off, those that go on. */
export function RunningWork({ of: page, group }: { of: RunningList | undefined; group: Group }) {
  const results = page?.results ?? []
  const list = results.filter(BELONGS[group])
  if (list.length === 0) return null
  const last = list.at(-1) === results.at(-1)
  const halted = group === 'halted'
  return (
    <section class={`stack running-${group}`} role={halted ? 'alert' : undefined}>
      <h2>{words.worklist.groups[group]}</h2>
      <ul class="ledger">
        {list.map((work) => (
          <li key={work.case_id}>
            <RunningRow of={work} />
          </li>
        ))}
      </ul>
      {last && page?.next != null && <p class="small soft">{words.worklist.more(results.length)}</p>}
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
        <span class="small soft block">{of.student.name}</span>
        <span class="small block">
          {(of.emergencies ?? []).map((emergency) => (
            <b key={emergency.at} class="block">
              {emergency.what === ''
                ? words.emergency.notSo(emergency.corrected_by)
                : words.chair.emergencies[emergency.what]}
              {emergency.what !== '' &&
                emergency.corrected_by !== '' &&
                `. ${words.emergency.corrected(emergency.corrected_by)}`}
              {emergency.coming !== '' && `. ${words.emergency.comes(emergency.coming)}`}
            </b>
          ))}
          {of.taken_over && <b class="block">{words.worklist.takenOver(of.taken_over.name)}</b>}
          {of.on_site && <span class="block">{words.visit.inRoom(of.on_site.name)}</span>}
          {of.check_due && <b class="block">{words.worklist.checkDue}</b>}
          {missing
            .filter((what) => what !== 'halted' && what !== 'closed')
            .map((what) => (
              <b key={what} class="block">
                {words.visit.missing[what]}
              </b>
            ))}
          {!missing.includes('closed') && of.now && <InHand now={of.now} seconds={of.step_s} />}
          {!missing.includes('closed') && of.canals.map((canal) => <CanalLine key={canal.canal} of={canal} />)}
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

/** The step in the student's hand, and for how long. */
function InHand({ now, seconds }: { now: NonNullable<Running['now']>; seconds: number | null }) {
  return (
    <span class="block in-hand">
      <b>{now.canal}</b> {words.phase(now.phase)}, {now.instrument || words.order.action(now.action)}
      {seconds !== null && <span class="soft"> · {words.worklist.since(seconds)}</span>}
    </span>
  )
}

/** A canal that waits, is held or went otherwise than expected; of one that simply goes on nothing has to be said. */
function CanalLine({ of }: { of: Running['canals'][number] }) {
  const outside = of.out_of_band
  if (of.state === 'open' && !outside && !of.asked) return null
  return (
    <>
      <WaitsFor of={of} />
      {outside && (
        <span class="block strong" data-severity="caution">
          <Sign name="caution" />{' '}
          {words.worklist.outside(
            mm(outside.depth_um / 1000),
            mm(outside.low_um / 1000),
            mm(outside.high_um / 1000),
            outside.as_if_straight ?? false,
          )}
        </span>
      )}
    </>
  )
}
