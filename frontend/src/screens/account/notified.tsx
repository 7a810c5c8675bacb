import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { Sign } from '@/parts/signs'
import { useSending } from '@/store/forms/sending'
import { usePush } from '@/store/session/push'
import { words } from '@/words/en'

/** A supervisor's notifications on this device: whether they come, and the way to turn them on or off. */
export function Notified() {
  const { state, allow, stop } = usePush()
  const [sending, run] = useSending()
  const busy = sending.state === 'busy'
  return (
    <section class="card stack">
      <h2>{words.push.title}</h2>
      <p>{words.push.says}</p>
      {(state === 'unsupported' || state === 'denied') && <Notice>{words.push[state]}</Notice>}
      {state === 'unreachable' && <Notice sign="caution">{words.push.unreachable}</Notice>}
      {(state === 'on' || state === 'off') && (
        <p class="strong">
          <Sign name={state === 'on' ? 'approved' : 'draft'} /> {words.push[state]}
        </p>
      )}
      <Sent sending={sending} />
      {state === 'on' && (
        <button type="button" class="button plain" disabled={busy} onClick={() => void run(stop)}>
          {words.push.stop}
        </button>
      )}
      {(state === 'off' || state === 'unreachable') && (
        <button type="button" class="button answer" disabled={busy} onClick={() => void run(allow)}>
          {words.push.allow}
        </button>
      )}
    </section>
  )
}
