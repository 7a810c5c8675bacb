import type { ComponentChildren, JSX } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Refused, Unreachable } from '@/api/problem'
import type { InvitationSeen } from '@/api/shapes'
import { Notice, Skeleton } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { go } from '@/router'
import { useSending } from '@/store/forms/sending'
import { join, lookAtLink, session, sessionState, signOut } from '@/store/session/session'
import { words } from '@/words/en'
import { NewAccount } from './new-account'

interface JoinProps {
  /** The form to sign in with, below what it is for. */
  signIn: (above: ComponentChildren) => JSX.Element
}

type Looked = 'looking' | 'unreachable' | { seen: InvitationSeen } | { refused: string }

/** What a link leads to, and joining by it: with the account that is signed in, or with a new one. */
export function Join({ signIn }: JoinProps) {
  // What stands after the # is never part of a request's address; it goes to the server in a body.
  const [secret] = useState(() => location.hash.slice(1))
  const [looked, setLooked] = useState<Looked>('looking')
  const look = async () => {
    if (!secret) return setLooked({ refused: words.join.noLink })
    setLooked('looking')
    setLooked(await outcomeOf(secret))
  }
  useEffect(() => {
    document.title = `${words.join.title} · ${words.product}`
    void look()
  }, [])
  if (looked === 'looking')
    return (
      <Around title={words.product}>
        <Skeleton rows={3} says={words.loading} />
      </Around>
    )
  if (looked === 'unreachable')
    return (
      <Around title={words.product}>
        <Notice sign="caution" action={{ says: words.tryAgain, onDo: () => void look() }}>
          {words.join.unreachable}
        </Notice>
      </Around>
    )
  if ('refused' in looked)
    return (
      <Around title={words.product}>
        <Notice sign="stop">{looked.refused}</Notice>
        <a class="button" href="/">
          {words.signIn.title}
        </a>
      </Around>
    )
  return <Seen secret={secret} of={looked.seen} signIn={signIn} />
}

async function outcomeOf(secret: string): Promise<Looked> {
  try {
    return { seen: await lookAtLink(secret) }
  } catch (error) {
    if (error instanceof Unreachable) return 'unreachable'
    if (error instanceof Refused) return { refused: error.message }
    throw error
  }
}

function Seen({ secret, of, signIn }: JoinProps & { secret: string; of: InvitationSeen }) {
  const [hasAccount, setHasAccount] = useState(of.has_account)
  const signedIn = sessionState.value === 'in'
  if (!signedIn && hasAccount)
    return signIn(
      <>
        <About of={of} />
        <p>{words.join.account}</p>
        {!of.has_account && (
          <button type="button" class="button plain" onClick={() => setHasAccount(false)}>
            {words.join.haveNone}
          </button>
        )}
      </>,
    )
  return (
    <Around>
      <About of={of} />
      {signedIn ? (
        <JoinAs secret={secret} />
      ) : (
        <NewAccount secret={secret} of={of} onHasOne={() => setHasAccount(true)} />
      )}
    </Around>
  )
}

/** Joining with the account that is signed in. */
function JoinAs({ secret }: { secret: string }) {
  const [sending, run] = useSending()
  const submit = () => void run(() => join(secret).then(() => go('/', { replace: true })))
  const wrong = sending.problem?.at('invitation')
  return (
    <div class="stack">
      <p>{words.join.signedInAs(session.value?.person.name ?? '')}</p>
      {wrong && <Notice sign="stop">{wrong}</Notice>}
      <Sent sending={sending} fields={['invitation']} again={submit} />
      <button type="button" class="button main" disabled={sending.state === 'busy'} onClick={submit}>
        {sending.state === 'busy' ? words.join.busy : words.join.go}
      </button>
      <button type="button" class="button plain" onClick={() => void run(signOut)}>
        {words.join.notMe}
      </button>
    </div>
  )
}

function About({ of }: { of: InvitationSeen }) {
  return (
    <div class="stack close">
      <h1>{of.programme.name}</h1>
      <p>{words.join.asWhat(words.join.role[of.role], of.group)}</p>
      <p class="small soft">{words.join.until(words.date(of.ends_at))}</p>
    </div>
  )
}

interface AroundProps {
  /** Before it is known which programme it is. */
  title?: string
  children: ComponentChildren
}

function Around({ title, children }: AroundProps) {
  return (
    <main class="sign-in" id="main">
      {title && <h1>{title}</h1>}
      {children}
      <p class="small soft">{words.notice.always}</p>
    </main>
  )
}
