import { useState } from 'preact/hooks'
import type { Do } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair'
import { membership } from '@/store/session'
import { words } from '@/words/en'

/** A point where the supervisor's word is due: the student waits here, the supervisor answers here. */
export function HoldPoint({ chair, canal, node }: { chair: Chair; canal: string; node: Do }) {
  const [reason, setReason] = useState('')
  const [asked, setAsked] = useState(false)
  const say = (exit: 'approved' | 'returned') => {
    if (exit === 'returned' && !reason.trim()) setAsked(true)
    else void chair.record(canal, node.id, { kind: 'sign_off', exit, reason })
  }
  if (membership.value?.role !== 'supervisor') {
    return (
      <Notice sign="waiting">
        {words.chair.waitsFor(node.hold_point ?? '')} {words.chair.goOn}
      </Notice>
    )
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
      <div class="step-answers">
        <button type="button" class="button main" onClick={() => say('approved')}>
          {words.chair.approve}
        </button>
        <button type="button" class="button answer" onClick={() => say('returned')}>
          {words.chair.giveBack}
        </button>
      </div>
    </div>
  )
}
