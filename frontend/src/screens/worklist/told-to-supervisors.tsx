import { useState } from 'preact/hooks'
import type { Running } from '@/api/shapes'
import { useRunning } from '@/store/cache/review'
import { clockAhead_ms } from '@/store/device/clock'
import { recordEvent } from '@/store/outbox/record'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import './told-to-supervisors.css'

/** Emergencies that nobody goes to yet, over every screen of everybody who supervises. */
export function ToldToSupervisors() {
  const running = useRunning()
  const [going, setGoing] = useState<readonly string[]>([])
  const go = async (work: Running) => {
    const done = { plan_hash: work.plan_hash ?? '', seen_position: work.position, canal: '', node: '' }
    if (await recordEvent(work.case_id, { ...done, payload: { kind: 'come', note: '' } }))
      setGoing([...going, keyOf(work)])
    running.again()
  }
  const halted = running.value?.results.filter((work) => work.halted && unattended(work).length > 0) ?? []
  return (
    <>
      {halted
        .filter((work) => !going.includes(keyOf(work)))
        .map((work) => (
          <EmergencyBar key={work.case_id} of={work} onGo={() => void go(work)} />
        ))}
    </>
  )
}

const unattended = ({ emergencies = [] }: Running) => emergencies.filter((emergency) => emergency.coming === '')

/** Changes with what is told, so that whoever goes to one emergency is told of the next. */
const keyOf = (work: Running) => `${work.case_id} ${unattended(work).map(({ at, what }) => at + what)}`

function EmergencyBar({ of, onGo }: { of: Running; onGo: () => void }) {
  return (
    <section class="emergency-bar" role="alert">
      <b>{words.emergency.at(of.tooth.iso, of.patient_alias)}</b>
      {unattended(of).map((emergency) => (
        <p key={emergency.at}>
          <b>
            {emergency.what === ''
              ? words.emergency.notSo(emergency.corrected_by)
              : words.chair.emergencies[emergency.what]}
          </b>
          {emergency.what !== '' && emergency.corrected_by !== '' && (
            <> {words.emergency.corrected(emergency.corrected_by)}.</>
          )}
          <span class="block small">
            {words.emergency.who(
              emergency.told_by,
              words.setting[of.setting] ?? '',
              words.emergency.ago(ageOf_s(emergency.at)),
            )}
          </span>
        </p>
      ))}
      <div class="row wrap">
        {membership.value?.role === 'supervisor' && (
          <button type="button" class="button main" onClick={onGo}>
            {words.emergency.going}
          </button>
        )}
        <a class="button" href={`/cases/${of.case_id}/chair`}>
          {words.emergency.open}
        </a>
      </div>
    </section>
  )
}

const ageOf_s = (at: string) => Math.max(0, (Date.now() - clockAhead_ms.value - Date.parse(at)) / 1000)
