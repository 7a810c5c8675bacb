import { useRef, useState } from 'preact/hooks'
import type { CaseShown } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { NoName, saidOf } from '@/parts/no-name'
import { Sent } from '@/parts/sent'
import { changeCase } from '@/store/cache/cases'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

/** A mistyped alias is corrected: the old text goes everywhere. */
export function Alias({ of }: { of: CaseShown }) {
  const [typed, setTyped] = useState('')
  const [sending, run] = useSending()
  const noName = useRef<string | undefined>(undefined)
  const send = () =>
    run(async () => {
      await changeCase(of.id, saidOf(typed, noName.current))
      setTyped('')
    })
  const submit = (event: Event) => {
    event.preventDefault()
    if (typed.trim()) void send()
  }
  return (
    <details>
      <summary>{words.chart.aliasWrong}</summary>
      <form class="stack" onSubmit={submit}>
        <TextField
          label={words.chart.aliasInstead(of.patient_alias)}
          hint={words.chart.aliasHint}
          autoComplete="off"
          maxLength={40}
          value={typed}
          wrong={sending.problem?.at('patient_alias')}
          onInput={setTyped}
        />
        <NoName
          of={sending}
          onSaid={() => {
            noName.current = typed
            void send()
          }}
        />
        <Sent sending={sending} fields={['patient_alias']} again={() => void send()} />
        <button type="submit" class="button answer" disabled={!typed.trim() || sending.state === 'busy'}>
          {words.chart.aliasSave}
        </button>
      </form>
    </details>
  )
}
