import { useState } from 'preact/hooks'
import { TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { useSending } from '@/store/sending'
import { useDraft } from '@/store/use'
import { uuid7 } from '@/store/uuid7'
import { words } from '@/words/en'

interface Props {
  /** Of the draft: what is half typed waits on the phone. */
  name: string
  says: {
    readonly open: string
    readonly reason: string
    readonly hint: string
    readonly go: string
    readonly keep: string
  }
  onSend: (body: { id: string; reason: string }) => Promise<unknown>
}

/** Something that is done with a reason, in two touches: the first asks why. */
export function WithReason({ name, says, onSend }: Props) {
  const draft = useDraft(name, () => ({ id: uuid7(), reason: '' }))
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [opened, setOpened] = useState<boolean>()
  const [tried, setTried] = useState(false)
  const { id, reason } = draft.fields.value
  const lacks = reason.trim() === ''
  const send = () => run(() => onSend({ id, reason: reason.trim() }))
  if (!(opened ?? draft.restored.value)) {
    return (
      <button type="button" class="button" onClick={() => setOpened(true)}>
        {says.open}
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
        label={says.reason}
        hint={says.hint}
        wrong={tried && lacks ? words.required : sending.problem?.at('reason')}
        value={reason}
        rows={2}
        maxLength={2000}
        onInput={(text) => draft.set({ reason: text })}
      />
      <Sent sending={sending} fields={['reason']} again={() => void send()} />
      <div class="step-answers two">
        <button type="button" class="button" onClick={() => setOpened(false)}>
          {says.keep}
        </button>
        <button type="submit" class="button main" disabled={sending.state === 'busy'}>
          {says.go}
        </button>
      </div>
    </form>
  )
}
