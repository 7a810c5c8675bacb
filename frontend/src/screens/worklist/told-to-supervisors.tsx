import { useState } from 'preact/hooks'
import type { Running } from '@/api/shapes'
import { useRunning } from '@/store/cache/review'
import { clockAhead_ms } from '@/store/device/clock'
import { tell } from '@/store/outbox/record'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import './told-to-supervisors.css'

/** Emergencies that nobody goes to yet, over every screen of everybody who supervises. */
export function ToldToSupervisors() {
  const running = useRunning()
  const [going, setGoing] = useState<readonly string[]>([])
  const go = async (one: Running) => {
    const done = { plan_hash: one.plan_hash ?? '', seen_position: one.position, canal: '', node: '' }
    if (await tell(one.case, { ...done, told: { kind: 'come', note: '' } })) setGoing([...going, keyOf(one)])
    running.again()
  }
  const halted = running.value?.results.filter((one) => one.halted && unattended(one).length > 0) ?? []
  return (
    <>
      {halted
        .filter((one) => !going.includes(keyOf(one)))
        .map((one) => (
          <EmergencyBar key={one.case} of={one} onGo={() => void go(one)} />
        ))}
    </>
  )
}

const unattended = ({ emergencies = [] }: Running) => emergencies.filter((one) => one.coming === '')

/** Changes with what is told, so that whoever goes to one emergency is told of the next. */
const keyOf = (one: Running) => `${one.case} ${unattended(one).map(({ at, what }) => at + what)}`

function EmergencyBar({ of, onGo }: { of: Running; onGo: () => void }) {
  return (
    <section class="emergency-bar" role="alert">
      <b>{words.emergency.at(of.tooth.iso, of.patient_alias)}</b>
      {unattended(of).map((one) => (
        <p key={one.at}>
          <b>{one.what === '' ? words.emergency.notSo(one.corrected_by) : words.chair.emergencies[one.what]}</b>
          {one.what !== '' && one.corrected_by !== '' && <> {words.emergency.corrected(one.corrected_by)}.</>}
          <span class="block small">
            {words.emergency.who(one.told_by, words.setting[of.setting] ?? '', words.emergency.ago(ageOf_s(one.at)))}
          </span>
        </p>
      ))}
      <div class="row wrap">
        {membership.value?.role === 'supervisor' && (
          <button type="button" class="button main" onClick={onGo}>
            {words.emergency.going}
          </button>
        )}
        <a class="button" href={`/cases/${of.case}/chair`}>
          {words.emergency.open}
        </a>
      </div>
    </section>
  )
}

const ageOf_s = (at: string) => Math.max(0, (Date.now() - clockAhead_ms.value - Date.parse(at)) / 1000)
