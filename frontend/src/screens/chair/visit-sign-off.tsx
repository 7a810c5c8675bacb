import { useState } from 'preact/hooks'
import { TextField } from '@/parts/fields'
import { StepAnswers } from '@/parts/step-answers'
import type { Chair } from '@/store/chair/chair'
import { membership } from '@/store/session/session'
import type { PayloadOf } from '@/walk/course-event'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  /** What is signed off. */
  node: string
  yes: string
  no: string
}

/** A supervisor's sign-off of the visit: yes, or no with a reason. Nobody else sees it. */
export function VisitSignOff({ chair, node, yes, no }: Props) {
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)
  if (membership.value?.role !== 'supervisor') return null
  const say = (exit: PayloadOf<'sign_off'>['exit']) => {
    if (exit === 'returned' && !reason.trim()) setAsked(true)
    else void chair.record('', node, { kind: 'sign_off', exit, reason })
  }
  return (
    <div class="stack">
      <TextField
        label={words.chair.reason}
        value={reason}
        onInput={setReason}
        rows={2}
        wrong={asked && !reason.trim() ? words.chair.reasonNeeded : undefined}
      />
      <StepAnswers>
        <button type="button" class="button main" onClick={() => say('approved')}>
          {yes}
        </button>
        <button type="button" class="button answer" onClick={() => say('returned')}>
          {no}
        </button>
      </StepAnswers>
    </div>
  )
}
