import { useState } from 'preact/hooks'
import type { InvitationSeen } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { go } from '@/router'
import { useSending } from '@/store/forms/sending'
import { joinAnew } from '@/store/session/session'
import { words } from '@/words/en'

const FIELDS = ['username', 'name', 'password']

interface NewAccountProps {
  secret: string
  of: InvitationSeen
  onHasOne: () => void
}

/** A password, and of the names those that the coordinator has not given. */
export function NewAccount({ secret, of, onHasOne }: NewAccountProps) {
  const [username, setUsername] = useState(of.username)
  const [name, setName] = useState(of.name)
  const [password, setPassword] = useState('')
  const [sending, run] = useSending()
  const send = () =>
    void run(() =>
      joinAnew({ invitation: secret, username: username.trim(), name: name.trim(), password }).then(() =>
        go('/', { replace: true }),
      ),
    )
  const submit = (event: Event) => {
    event.preventDefault()
    send()
  }
  const ready = username.trim() !== '' && name.trim() !== '' && password !== ''
  return (
    <form class="stack" onSubmit={submit} aria-label={words.join.title}>
      {of.name ? (
        <p>{words.join.youAre(of.name)}</p>
      ) : (
        <TextField
          label={words.join.name}
          name="name"
          autoComplete="name"
          maxLength={80}
          value={name}
          onInput={setName}
          wrong={sending.problem?.at('name')}
        />
      )}
      {/* A password manager keeps the user name with the password, also where it was given. */}
      <TextField
        label={words.join.username}
        hint={of.username ? undefined : words.join.usernameHint}
        name="username"
        autoComplete="username"
        maxLength={60}
        value={username}
        onInput={setUsername}
        readOnly={of.username !== ''}
        wrong={sending.problem?.at('username')}
      />
      <TextField
        label={words.join.password}
        hint={words.join.passwordHint}
        name="password"
        type="password"
        autoComplete="new-password"
        value={password}
        onInput={setPassword}
        wrong={sending.problem?.at('password')}
      />
      <Sent sending={sending} fields={FIELDS} again={send} />
      <button type="submit" class="button main" disabled={sending.state === 'busy' || !ready}>
        {sending.state === 'busy' ? words.join.busy : words.join.go}
      </button>
      <button type="button" class="button plain" onClick={onHasOne}>
        {words.join.haveOne}
      </button>
    </form>
  )
}
