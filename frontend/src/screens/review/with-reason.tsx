import { useState } from 'preact/hooks'
import { Select, TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { StepAnswers } from '@/parts/step-answers'
import { useDraft } from '@/store/cache/hooks'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

/** One of a few that goes with the reason. */
export interface Pick {
  /** Where the server names it. */
  readonly field: string
  readonly label: string
  readonly hint: string
  /** What stands there while nothing is chosen. */
  readonly none: string
  readonly options: readonly string[]
}

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
  pick?: Pick | undefined
  onSend: (body: { id: string; reason: string }, picked: string) => Promise<unknown>
}

/** Something that is done with a reason, in two touches: the first asks why. */
export function WithReason({ name, says, pick, onSend }: Props) {
  const draft = useDraft(name, () => ({ id: uuid7(), reason: '', picked: '' }))
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [opened, setOpened] = useState<boolean>()
  const [tried, setTried] = useState(false)
  const { id, reason, picked } = draft.fields.value
  const lacks = reason.trim() === ''
  const unpicked = pick !== undefined && !picked
  const send = () => run(() => onSend({ id, reason: reason.trim() }, picked))
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
    if (!lacks && !unpicked) void send()
  }
  return (
    <form class="card stack close" onSubmit={submit}>
      {pick && (
        <Select
          label={pick.label}
          hint={pick.hint}
          wrong={tried && unpicked ? words.required : sending.problem?.at(pick.field)}
          value={picked}
          options={[{ value: '', says: pick.none }, ...pick.options.map((option) => ({ value: option, says: option }))]}
          onChoose={(to) => draft.set({ picked: to })}
        />
      )}
      <TextField
        label={says.reason}
        hint={says.hint}
        wrong={tried && lacks ? words.required : sending.problem?.at('reason')}
        value={reason}
        rows={2}
        maxLength={2000}
        onInput={(text) => draft.set({ reason: text })}
      />
      <Sent sending={sending} fields={pick ? ['reason', pick.field] : ['reason']} again={() => void send()} />
      <StepAnswers also="two">
        <button type="button" class="button" onClick={() => setOpened(false)}>
          {says.keep}
        </button>
        <button type="submit" class="button main" disabled={sending.state === 'busy'}>
          {says.go}
        </button>
      </StepAnswers>
    </form>
  )
}
