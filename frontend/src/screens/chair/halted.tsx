import { useEffect, useState } from 'preact/hooks'
import { adviceIn, canHappen } from '@/panels/emergency/at-hand'
import { ToldEmergencies } from '@/panels/emergency/told-emergencies'
import { Problem } from '@/panels/emergency/trouble'
import { TextField, Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { mayTell, works } from '@/store/chair/part'
import type { OfEmergency } from '@/store/outbox/emergencies'
import { membership, session } from '@/store/session/session'
import { words } from '@/words/en'

/** An emergency stops the tooth; another one can be told, and the one that was told can be corrected. */
export function Halted({ chair }: { chair: Chair }) {
  const { open } = chair.course.emergencies
  const by = (id: string) => {
    const event = chair.treatment.events.find((event) => event.id === id)
    return event?.actor.name ?? session.value?.person.name ?? ''
  }
  const tell = (payload: OfEmergency) => void chair.record('', '', payload)
  const may = mayTell(chair.course, 'emergency')
  useEffect(() => globalThis.scrollTo?.(0, 0), [open.length])
  return (
    <section class="halted stack" role="alert" aria-label={words.emergency.halted}>
      <ToldEmergencies
        caseId={chair.caseId}
        emergencies={open}
        advice={adviceIn(chair)}
        by={by}
        there={works(chair.course)}
        canHappen={(what) => canHappen(chair, 'emergency', what)}
        onTell={may ? tell : undefined}
      />
      {may && (
        <Problem
          says={words.emergency.another}
          canHappen={(about, what) => canHappen(chair, about, what)}
          onTell={tell}
        />
      )}
      <ResumeTooth chair={chair} says={words.chair.resume} />
    </section>
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
  // One that comes in between was not seen: it goes on halting.
  const seen = [...chair.course.emergencies.halting.keys()]
  const mayKeep = chair.course.haltedBy !== null && chair.course.salineBy !== null
  return (
    <div class="stack">
      <TextField label={words.chair.reason} value={reason} onInput={setReason} rows={2} />
      {mayKeep && <Tick label={words.card.keepSaline} checked={keep} onChange={setKeep} />}
      <button
        type="button"
        class="button main"
        disabled={!reason.trim()}
        onClick={() => void chair.record('', '', { kind: 'resume', reason, keep_saline: mayKeep && keep, ends: seen })}
      >
        {says}
      </button>
    </div>
  )
}
