import { useState } from 'preact/hooks'
import type { NewKey, Scope } from '@/api/shapes'
import { Choice, TextField, Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import './keys.css'

const DAYS = ['30', '90', '365'] as const
const FIELDS = ['name', 'password']

interface MakeKeyProps {
  label: string
  scopes: readonly Scope[]
  make: (body: NewKey) => Promise<unknown>
  onStop: () => void
}

/** What a key is for, what it may and how long; making one asks for the password, as a key outlasts the session. */
export function MakeKey({ label, scopes, make, onStop }: MakeKeyProps) {
  const [name, setName] = useState('')
  const [chosen, setChosen] = useState<readonly Scope[]>([])
  const [days, setDays] = useState<(typeof DAYS)[number]>('90')
  const [password, setPassword] = useState('')
  const [sending, run] = useSending()
  const ready = name.trim() !== '' && chosen.length > 0 && password !== ''
  const submit = (event: Event) => {
    event.preventDefault()
    if (ready) void run(() => make({ name, scopes: [...chosen], days: Number(days), password }))
  }
  return (
    <form class="stack" onSubmit={submit}>
      <TextField
        label={label}
        value={name}
        onInput={setName}
        autoComplete="off"
        maxLength={60}
        wrong={sending.problem?.at('name')}
      />
      <fieldset class="field">
        <legend>{words.keys.scopes}</legend>
        {scopes.map((scope) => (
          <Tick
            key={scope}
            label={words.keys.scope[scope]}
            checked={chosen.includes(scope)}
            onChange={(on) => setChosen(on ? [...chosen, scope] : chosen.filter((each) => each !== scope))}
          />
        ))}
      </fieldset>
      <Choice
        label={words.keys.ends}
        value={days}
        options={DAYS.map((value) => ({ value, says: words.keys.days[value] }))}
        onChoose={setDays}
      />
      <TextField
        label={words.keys.password}
        type="password"
        autoComplete="current-password"
        value={password}
        onInput={setPassword}
        wrong={sending.problem?.at('password')}
      />
      {sending.state === 'unsent' ? (
        <Notice sign="caution">{words.keys.unanswered}</Notice>
      ) : (
        <Sent sending={sending} fields={FIELDS} />
      )}
      <button type="submit" class="button main" disabled={sending.state === 'busy' || !ready}>
        {words.keys.make}
      </button>
      <button type="button" class="button plain" onClick={onStop}>
        {words.keys.stop}
      </button>
    </form>
  )
}

/** A key's text, this once. */
export function MadeOnce({ text, onDone }: { text: string; onDone: () => void }) {
  const [copied, setCopied] = useState<boolean>()
  const copy = () =>
    navigator.clipboard.writeText(text).then(
      () => setCopied(true),
      () => setCopied(false),
    )
  return (
    <div class="stack">
      <Notice sign="caution">{words.keys.made}</Notice>
      <code class="key-text">{text}</code>
      <button type="button" class="button answer" onClick={() => void copy()}>
        {copied ? words.keys.copied : words.keys.copy}
      </button>
      {copied === false && <Notice>{words.keys.notCopied}</Notice>}
      <button type="button" class="button" onClick={onDone}>
        {words.keys.done}
      </button>
    </div>
  )
}
