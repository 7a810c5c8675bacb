import { useEffect, useState } from 'preact/hooks'
import { TextField, Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair'
import { works } from '@/store/part'
import { membership } from '@/store/session'
import { actorOf } from '@/store/visits'
import type { Happened } from '@/walk/happened'
import { words } from '@/words/en'
import { FirstSteps } from './first-steps'

/** An emergency: first the person in the room, then what to do, then whether anybody elsewhere knows. */
export function Halted({ chair }: { chair: Chair }) {
  const event = chair.events.find((one) => one.id === chair.course.haltedBy)
  const what = String(event?.body.what ?? '')
  useEffect(() => globalThis.scrollTo?.(0, 0), [event?.id])
  const unsent = chair.waiting.some((entry) => entry.event.id === event?.id)
  return (
    <section class="halted stack" role="alert">
      {works(chair.course) ? <CallNow unsent={unsent} /> : <Told chair={chair} event={event} />}
      <p class="strong">
        {words.chair.emergencies[what]}. {words.chair.halted}
      </p>
      <FirstSteps chair={chair} about="emergency" what={what} />
      <p class="small">{words.chair.whose}</p>
      <ResumeTooth chair={chair} says={words.chair.resume} />
    </section>
  )
}

/** To whoever does not stand there. */
function Told({ chair, event }: { chair: Chair; event: Happened | undefined }) {
  return <h2>{words.look.emergency((event && actorOf(chair, event)) || words.look.somebody)}</h2>
}

function CallNow({ unsent }: { unsent: boolean }) {
  return (
    <>
      <h2>{words.chair.callNow}</h2>
      <Notice sign={unsent ? 'stop' : 'approved'}>{unsent ? words.chair.notSentCall : words.chair.sent}</Notice>
    </>
  )
}

/** Since an emergency, saline alone: said on every canal until a supervisor lifts it. */
export function SalineOnly({ chair }: { chair: Chair }) {
  if (!chair.course.salineBy || chair.course.haltedBy) return null
  return (
    <div class="stack">
      <Notice sign="stop">{words.card.saline}</Notice>
      <ResumeTooth chair={chair} says={words.card.liftSaline} />
    </div>
  )
}

/** Only a supervisor lets the work on the tooth go on, says why, and may keep it to saline. */
function ResumeTooth({ chair, says }: { chair: Chair; says: string }) {
  const [reason, setReason] = useState('')
  const [keep, setKeep] = useState(false)
  if (membership.value?.role !== 'supervisor') return null
  const mayKeep = chair.course.haltedBy !== null && chair.course.salineBy !== null
  return (
    <div class="stack">
      <TextField label={words.chair.reason} value={reason} onInput={setReason} rows={2} />
      {mayKeep && <Tick label={words.card.keepSaline} checked={keep} onChange={setKeep} />}
      <button
        type="button"
        class="button main"
        disabled={!reason.trim()}
        onClick={() => void chair.record('', '', { kind: 'resume', reason, keep_saline: mayKeep && keep })}
      >
        {says}
      </button>
    </div>
  )
}
