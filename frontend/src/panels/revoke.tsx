import { useState } from 'preact/hooks'
import { Sent } from '@/parts/sent'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

interface RevokeProps {
  /** Of what is revoked. */
  name: string
  revoke: () => Promise<void>
}

/** Revokes in two taps, as nothing brings it back. */
export function Revoke({ name, revoke }: RevokeProps) {
  const [asked, setAsked] = useState(false)
  const [sending, run] = useSending()
  return (
    <>
      <Sent sending={sending} />
      {asked ? (
        <div class="row">
          <button type="button" class="button" disabled={sending.state === 'busy'} onClick={() => void run(revoke)}>
            {words.keys.sure}
          </button>
          <button type="button" class="button plain" onClick={() => setAsked(false)}>
            {words.keys.keep}
          </button>
        </div>
      ) : (
        <button type="button" class="button plain" onClick={() => setAsked(true)}>
          {words.keys.revoke(name)}
        </button>
      )}
    </>
  )
}
