import { useEffect, useRef, useState } from 'preact/hooks'
import { Refused, Unreachable } from '@/api/problem'
import { TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { signIn } from '@/store/session/session'
import { words } from '@/words/en'
import './sign-in.css'

interface Props {
  again?: boolean
  /** What must not be covered: it stands over the form. */
  above?: preact.ComponentChildren
}

/** User name and password; with `again` it comes over the screen whose sign-in ran out. */
export function SignIn({ again = false, above = null }: Props) {
  const [username, setUsername] = useState('')
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState<string>()
  const [busy, setBusy] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    if (!again) document.title = `${words.signIn.title} · ${words.product}`
    form.current?.querySelector('input')?.focus()
  }, [again])

  const send = async (event: Event) => {
    event.preventDefault()
    setBusy(true)
    setWrong(undefined)
    try {
      await signIn(username.trim(), password)
    } catch (error) {
      setWrong(said(error))
    } finally {
      setBusy(false)
    }
  }

  return (
    <main
      class={again ? 'sign-in again' : 'sign-in'}
      id={again ? 'sign-in-again' : 'main'}
      aria-label={again ? words.signIn.onceMore : undefined}
    >
      {above}
      <div class="sign-in-head">
        <Mark />
        <h1>{words.product}</h1>
      </div>
      <form class="stack" ref={form} onSubmit={send} aria-label={words.signIn.title}>
        {again && <Notice sign="caution">{words.signIn.again}</Notice>}
        <TextField
          label={words.signIn.username}
          name="username"
          autoComplete="username"
          value={username}
          onInput={setUsername}
        />
        <TextField
          label={words.signIn.password}
          name="password"
          type="password"
          autoComplete="current-password"
          value={password}
          onInput={setPassword}
        />
        {wrong && <Notice sign="stop">{wrong}</Notice>}
        <button type="submit" class="button main" disabled={busy} aria-busy={busy}>
          {busy ? words.signIn.busy : words.signIn.go}
        </button>
      </form>
      <p class="small soft">{words.notice.always}</p>
    </main>
  )
}

function said(error: unknown): string {
  if (error instanceof Unreachable) return words.signIn.unreachable
  if (error instanceof Refused) return error.status === 401 || error.status === 400 ? words.signIn.wrong : error.message
  return words.notKnown
}

/** Four canals, the fourth in the colour of what is due now. */
function Mark() {
  return (
    <svg class="mark" viewBox="0 0 96 72" aria-hidden="true">
      <path class="line" d="M4 8h88" />
      <path class="canal" d="M8 16h14l-4 40h-6zM31 16h14l-4 32h-6zM54 16h14l-4 36h-6z" />
      <path class="fourth" d="M77 16h14l-4 48h-6z" />
    </svg>
  )
}

/** What everyone reads once before the first case: what this tool is, and who decides. */
export function FirstNotice({ onUnderstood }: { onUnderstood: () => void }) {
  useEffect(() => {
    document.title = `${words.notice.title} · ${words.product}`
  }, [])
  return (
    <main class="sign-in" id="main">
      <h1>{words.notice.title}</h1>
      <ul class="stack points">
        {words.notice.points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
      <button type="button" class="button main" onClick={onUnderstood}>
        {words.notice.go}
      </button>
    </main>
  )
}
