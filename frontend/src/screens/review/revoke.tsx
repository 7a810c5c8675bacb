import { useState } from 'preact/hooks'
import type { VersionShown } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { revoke } from '@/store/review'
import { useSending } from '@/store/sending'
import { membership, personId } from '@/store/session'
import { useDraft } from '@/store/use'
import { uuid7 } from '@/store/uuid7'
import { words } from '@/words/en'

/** The way to withdraw an approval that stands, for whoever may. */
export function Revoke({ of }: { of: VersionShown }) {
  return of.state === 'approved' && mayRevoke(of) ? <Form key={of.id} of={of} /> : null
}

/** Whoever gave the approval, or a coordinator; one that was carried over the server knows the giver of. */
function mayRevoke({ reviews, carried_from }: VersionShown): boolean {
  const role = membership.value?.role
  const giver = reviews.findLast((review) => review.decision === 'approved')?.supervisor.id
  return role === 'coordinator' || (role === 'supervisor' && (giver === personId() || carried_from !== null))
}

/** Two touches: the first asks why. */
function Form({ of }: { of: VersionShown }) {
  const draft = useDraft(`revoke ${of.id} ${of.revocations.length}`, () => ({ id: uuid7(), reason: '' }))
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [opened, setOpened] = useState(false)
  const [tried, setTried] = useState(false)
  const { id, reason } = draft.fields.value
  const lacks = reason.trim() === ''
  const send = () => run(() => revoke(of, { id, reason: reason.trim() }))
  if (!opened && !draft.restored.value) {
    return (
      <button type="button" class="button" onClick={() => setOpened(true)}>
        {words.revoke.open}
      </button>
    )
  }
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (!lacks) void send()
  }
  return (
    <form class="card stack close" onSubmit={submit}>
      <TextField
        label={words.revoke.reason}
        hint={words.revoke.hint}
        wrong={tried && lacks ? words.required : sending.problem?.at('reason')}
        value={reason}
        rows={2}
        maxLength={2000}
        onInput={(text) => draft.set({ reason: text })}
      />
      <Sent sending={sending} fields={['reason']} again={() => void send()} />
      <div class="step-answers two">
        <button type="button" class="button" onClick={() => setOpened(false)}>
          {words.revoke.keep}
        </button>
        <button type="submit" class="button main" disabled={sending.state === 'busy'}>
          {words.revoke.go}
        </button>
      </div>
    </form>
  )
}
