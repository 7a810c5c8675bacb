import { useState } from 'preact/hooks'
import { Sent } from '@/parts/sent'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

interface RevokeProps {
  /** Of what is revoked. */
  name: string
  revoke: () => Promise<void>
  /** The words, where it is no key. */
  says?: { ask: (name: string) => string; sure: string; keep: string }
}

const OF_KEYS = { ask: words.keys.revoke, sure: words.keys.sure, keep: words.keys.keep }

/** Revokes in two taps, as nothing brings it back. */
export function Revoke({ name, revoke, says = OF_KEYS }: RevokeProps) {
  const [asked, setAsked] = useState(false)
  const [sending, run] = useSending()
  return (
    <>
      <Sent sending={sending} />
      {asked ? (
        <div class="row">
          <button type="button" class="button" disabled={sending.state === 'busy'} onClick={() => void run(revoke)}>
            {says.sure}
          </button>
          <button type="button" class="button plain" onClick={() => setAsked(false)}>
            {says.keep}
          </button>
        </div>
      ) : (
        <button type="button" class="button plain" onClick={() => setAsked(true)}>
          {says.ask(name)}
        </button>
      )}
    </>
  )
}
