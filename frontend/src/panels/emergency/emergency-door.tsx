import { emergenciesTold, type OfEmergency, recordEmergency } from '@/store/outbox/emergencies'
import { useReady } from '@/store/outbox/ready'
import { session } from '@/store/session/session'
import { Emergencies } from '@/walk/emergencies'
import { words } from '@/words/en'
import { ToldEmergencies } from './told-emergencies'
import { Problem } from './trouble'
import './emergency-door.css'

const NOT_KNOWN = '0'.repeat(64) // the server keeps an emergency on a plan that it does not know, and marks it

/**
 * Where the chair cannot be shown or reached (a sign-in that ran out, a store that cannot be opened, a plan that is not
 * here), an emergency of the case can be told all the same, and what is to be done first is read.
 */
export function EmergencyDoor({ caseId }: { caseId: string }) {
  const ready = useReady(caseId)
  const unsent = emergenciesTold(caseId)
  const tell = (payload: OfEmergency) =>
    recordEmergency(caseId, {
      plan_hash: ready?.planHash ?? NOT_KNOWN,
      seen_position: ready?.position ?? 0,
      payload,
    })
  return (
    <section class="emergency-door stack" aria-label={words.emergency.title}>
      {unsent.length > 0 && (
        <section class="halted stack" role="alert" aria-label={words.emergency.halted}>
          <ToldEmergencies
            caseId={caseId}
            emergencies={openOf(unsent)}
            advice={ready?.advice ?? []}
            by={() => session.value?.person.name ?? ''}
            there
            onTell={tell}
          />
        </section>
      )}
      <Problem says={unsent.length > 0 ? words.emergency.another : words.chair.problem} onTell={tell} />
    </section>
  )
}

function openOf(unsent: ReturnType<typeof emergenciesTold>) {
  const emergencies = new Emergencies()
  for (const { id, event } of unsent) {
    const payload = event.payload
    if (payload.kind === 'emergency') emergencies.tell(id, payload)
    else if (payload.kind === 'corrected') emergencies.correct(id, payload)
  }
  return emergencies.open
}
