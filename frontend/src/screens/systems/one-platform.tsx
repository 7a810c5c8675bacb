import { useState } from 'preact/hooks'
import type { PlatformShown } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { setPlatform } from '@/store/cache/systems'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import './systems.css'

const FIELDS = ['password']

/** Whether a platform's courses lead here, and what it was not told; switched with the password, as it signs people in. */
export function OnePlatform({ of }: { of: PlatformShown }) {
  const [asked, setAsked] = useState(false)
  const says = of.active ? words.systems.switchOff(of.name) : words.systems.switchOn(of.name)
  const about = [of.active ? words.systems.on : words.systems.off]
  if (of.grades_waiting > 0) about.push(words.systems.grades(of.grades_waiting))
  return (
    <div class="stack close one-system">
      <h3>{of.name}</h3>
      <p class="small">{of.issuer}</p>
      <p class={of.active ? 'small soft' : 'small strong'}>{about.join(', ')}</p>
      {of.last_refusal && <p class="small">{of.last_refusal}</p>}
      {asked ? (
        <Switch of={of} says={says} onEnd={() => setAsked(false)} />
      ) : (
        <button type="button" class="button plain" onClick={() => setAsked(true)}>
          {says}
        </button>
      )}
    </div>
  )
}

function Switch({ of, says, onEnd }: { of: PlatformShown; says: string; onEnd: () => void }) {
  const [password, setPassword] = useState('')
  const [sending, run] = useSending()
  const submit = (event: Event) => {
    event.preventDefault()
    if (password !== '') void run(() => setPlatform(of, !of.active, password).then(onEnd))
  }
  return (
    <form class="stack" onSubmit={submit}>
      <TextField
        label={words.keys.password}
        type="password"
        autoComplete="current-password"
        value={password}
        onInput={setPassword}
        wrong={sending.problem?.at('password')}
      />
      <Sent sending={sending} fields={FIELDS} />
      <button type="submit" class="button" disabled={sending.state === 'busy' || password === ''}>
        {says}
      </button>
      <button type="button" class="button plain" onClick={onEnd}>
        {words.systems.leave}
      </button>
    </form>
  )
}
