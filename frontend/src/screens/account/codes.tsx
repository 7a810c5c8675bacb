import { useState } from 'preact/hooks'
import type { CodeSecretShown } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Seen } from '@/parts/seen'
import { Sent } from '@/parts/sent'
import { Sign } from '@/parts/signs'
import { confirmCodes, makeCodes, removeCodes, useCodes } from '@/store/cache/review'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import './codes.css'

/** A supervisor's one-time codes: make them, take them into a code app, confirm, renew, remove. */
export function Codes() {
  const codes = useCodes()
  const [made, setMade] = useState<CodeSecretShown>()
  const [sending, run] = useSending()
  return (
    <section class="card stack">
      <h2>{words.codes.title}</h2>
      <p>{words.codes.says}</p>
      <Seen of={codes} rows={1}>
        {({ state, since }) => (
          <>
            <p class="strong">
              <Sign name={state === 'counts' ? 'approved' : 'draft'} />{' '}
              {state === 'counts' && since ? words.codes.counts(words.when(since)) : words.codes.none}
            </p>
            {state === 'to_confirm' && !made && <Notice>{words.codes.toConfirm}</Notice>}
            {made ? (
              <Made of={made} onDone={() => setMade(undefined)} />
            ) : (
              <Make renew={state === 'counts'} onMade={setMade} />
            )}
            {state === 'counts' && (
              <button type="button" class="button plain" onClick={() => void run(removeCodes)}>
                {words.codes.remove}
              </button>
            )}
            <Sent sending={sending} />
          </>
        )}
      </Seen>
    </section>
  )
}

function Make({ renew, onMade }: { renew: boolean; onMade: (made: CodeSecretShown) => void }) {
  const [password, setPassword] = useState('')
  const [sending, run] = useSending()
  const submit = (event: Event) => {
    event.preventDefault()
    if (password) void run(async () => onMade(await makeCodes(password)))
  }
  return (
    <form class="stack close" onSubmit={submit}>
      <TextField
        label={words.codes.password}
        type="password"
        autoComplete="current-password"
        value={password}
        onInput={setPassword}
        wrong={sending.problem?.at('password')}
      />
      <Sent sending={sending} fields={['password']} />
      <button type="submit" class="button answer" disabled={sending.state === 'busy' || !password}>
        {renew ? words.codes.renew : words.codes.make}
      </button>
    </form>
  )
}

/** The secret, this once, and the first code of it. */
function Made({ of, onDone }: { of: CodeSecretShown; onDone: () => void }) {
  const [code, setCode] = useState('')
  const [sending, run] = useSending()
  const submit = (event: Event) => {
    event.preventDefault()
    if (code) void run(() => confirmCodes(code).then(onDone))
  }
  return (
    <form class="stack" onSubmit={submit}>
      <Notice sign="caution">{words.codes.once}</Notice>
      <SquareCode rows={of.square} says={words.codes.square} />
      <a class="button" href={of.address}>
        {words.codes.app}
      </a>
      <p>
        {words.codes.typed} <code class="secret">{of.secret.match(/.{1,4}/g)?.join(' ')}</code>
      </p>
      <TextField
        label={words.hold.onSiteSignOff.code}
        value={code}
        onInput={setCode}
        inputMode="numeric"
        autoComplete="one-time-code"
        maxLength={7}
        wrong={sending.problem?.at('code')}
      />
      <Sent sending={sending} fields={['code']} />
      <button type="submit" class="button main" disabled={sending.state === 'busy' || !code}>
        {words.codes.confirm}
      </button>
    </form>
  )
}

const QUIET = 4 // modules of margin that ISO/IEC 18004 asks for

/** A QR code from its rows of 0 and 1: always dark on light, or no camera reads it. */
export function SquareCode({ rows, says }: { rows: readonly string[]; says: string }) {
  const size = rows.length + 2 * QUIET
  const dark = rows.flatMap((row, y) =>
    [...row].flatMap((module, x) => (module === '1' ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])),
  )
  return (
    <svg class="square-code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={says} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={dark.join('')} fill="#000" />
    </svg>
  )
}
