import type { WebhookShown } from '@/api/shapes'
import { Sent } from '@/parts/sent'
import { setWebhook } from '@/store/cache/systems'
import { useSending } from '@/store/forms/sending'
import { hostOf } from '@/units/addresses'
import { words } from '@/words/en'
import './systems.css'

/** Where messages go, whether they arrive, and pausing it or having it go on. */
export function OneWebhook({ of }: { of: WebhookShown }) {
  const [sending, run] = useSending()
  const host = hostOf(of.address)
  const active = of.state === 'active'
  return (
    <div class="stack close one-system">
      <h3>{host}</h3>
      <p class={active ? 'small soft' : 'small strong'}>
        {[words.systems.state[of.state], words.systems.waiting(of.waiting)].join(', ')}
        {of.failing_since && `, ${words.systems.failing(words.when(of.failing_since))}`}
      </p>
      {of.service && <p class="small">{of.service.name}</p>}
      <Sent sending={sending} />
      <button
        type="button"
        class="button"
        disabled={sending.state === 'busy'}
        onClick={() => void run(() => setWebhook(of, active ? 'paused' : 'active'))}
      >
        {active ? words.systems.pause(host) : words.systems.goOn(host)}
      </button>
    </div>
  )
}
