import { useState } from 'preact/hooks'
import type { KeyShown } from '@/api/shapes'
import { Sent } from '@/parts/sent'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import './keys.css'

interface OneKeyProps {
  of: KeyShown
  /** Says who made it, where that need not be the reader. */
  byWhom: boolean
  revoke: (id: string) => Promise<void>
}

/** What a key may, until when, and when it was used last; revoked in two taps, as nothing brings it back. */
export function OneKey({ of, byWhom, revoke }: OneKeyProps) {
  const [asked, setAsked] = useState(false)
  const [sending, run] = useSending()
  const over = new Date(of.ends_at) <= new Date()
  const about = [
    words.keys.endsOn(words.date(of.ends_at), over),
    words.keys.used(of.last_used_at && words.when(of.last_used_at)),
    ...(byWhom ? [words.keys.madeBy(of.made_by.name)] : []),
  ]
  return (
    <div class="stack close one-key">
      <h3>{of.name}</h3>
      <p class="small">{of.scopes.map((scope) => words.keys.scope[scope]).join('; ')}</p>
      <p class={over ? 'small strong' : 'small soft'}>{about.join(', ')}</p>
      <Sent sending={sending} />
      {asked ? (
        <div class="row">
          <button
            type="button"
            class="button"
            disabled={sending.state === 'busy'}
            onClick={() => void run(() => revoke(of.id))}
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
