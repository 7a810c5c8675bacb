import { useState } from 'preact/hooks'
import type { Caution, Override, VersionShown } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { Sign } from '@/parts/signs'
import { letPass, takeBack } from '@/store/overrides'
import { useSending } from '@/store/sending'
import { useDraft } from '@/store/use'
import { uuid7 } from '@/store/uuid7'
import { words } from '@/words/en'

interface Props {
  of: VersionShown
  caution: Caution
  /** What supervisors let pass in this case so far. */
  overrides: readonly Override[]
}

/** A supervisor lets the work go on in spite of this caution, with a reason, or takes that back. */
export function LetPass({ of, caution, overrides }: Props) {
  const standing = overrides.find(
    (o) => o.withdrawn_at === null && o.code === caution.code && o.canal === caution.canal,
  )
  if (standing) return <Passed of={of} override={standing} inPlan={caution.overridden != null} />
  if (!caution.may_override || caution.overridden != null) return null
  return <Form of={of} caution={caution} />
}

function Form({ of, caution }: Pick<Props, 'of' | 'caution'>) {
  const { code, canal } = caution
  const draft = useDraft(`let pass ${of.id} ${code} ${canal}`, () => ({ id: uuid7(), reason: '' }))
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [opened, setOpened] = useState(false)
  const [tried, setTried] = useState(false)
  const { id, reason } = draft.fields.value
  const lacks = reason.trim() === ''
  const send = () => run(() => letPass(of, { id, code, canal, reason: reason.trim() }))
  if (!opened && !draft.restored.value) {
    return (
      <button type="button" class="button" onClick={() => setOpened(true)}>
        {words.letPass.open}
      </button>
    )
  }
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (!lacks) void send()
  }
  return (
    <form class="stack close" onSubmit={submit}>
      <TextField
        label={words.letPass.reason}
        hint={words.letPass.hint}
        wrong={tried && lacks ? words.required : sending.problem?.at('reason')}
        value={reason}
        rows={2}
        maxLength={2000}
        onInput={(text) => draft.set({ reason: text })}
      />
      <Sent sending={sending} fields={['reason']} again={() => void send()} />
      <button type="submit" class="button" disabled={sending.state === 'busy'}>
        {words.letPass.go}
      </button>
    </form>
  )
}

function Passed({ of, override, inPlan }: { of: VersionShown; override: Override; inPlan: boolean }) {
  const [sending, run] = useSending()
  const back = () => void run(() => takeBack(of, override))
  return (
    <div class="stack close">
      <p class="let-pass">
        <Sign name="approved" /> <b>{words.letPass.by(override.supervisor.name, words.when(override.at))}</b>{' '}
        {inPlan ? '' : override.reason}
      </p>
      {!inPlan && <p class="small">{words.letPass.next}</p>}
      <Sent sending={sending} again={back} />
      <button type="button" class="button plain" disabled={sending.state === 'busy'} onClick={back}>
        {words.letPass.back}
      </button>
    </div>
  )
}
