import { useState } from 'preact/hooks'
import type { ClientShown } from '@/api/shapes'
import { Sent } from '@/parts/sent'
import { revokeClient } from '@/store/cache/systems'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import './systems.css'

/** What a client may, for whom it acts; revoked in two taps, as nothing brings it back. */
export function OneClient({ of }: { of: ClientShown }) {
  const [asked, setAsked] = useState(false)
  const [sending, run] = useSending()
  return (
    <div class="stack close one-system">
      <h3>{of.name}</h3>
      <p class="small">{of.scopes.map((scope) => words.keys.scope[scope]).join('; ')}</p>
      <p class="small soft">{[words.systems.actsFor[of.acts_for], words.keys.madeBy(of.made_by.name)].join(', ')}</p>
      <Sent sending={sending} />
      {asked ? (
        <div class="row">
          <button
            type="button"
            class="button"
            disabled={sending.state === 'busy'}
            onClick={() => void run(() => revokeClient(of.id))}
          >
            {words.keys.sure}
          </button>
          <button type="button" class="button plain" onClick={() => setAsked(false)}>
            {words.keys.keep}
          </button>
        </div>
      ) : (
        <button type="button" class="button plain" onClick={() => setAsked(true)}>
          {words.keys.revoke(of.name)}
        </button>
      )}
    </div>
  )
}
