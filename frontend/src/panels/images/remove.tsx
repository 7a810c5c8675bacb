import { useEffect, useState } from 'preact/hooks'
import type { RemovalReason } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import './images.css'

interface Props {
  asked: boolean
  onAsk: (asked: boolean) => void
  busy?: boolean
  onRemove: (reason: RemovalReason) => void
}

const SLIP_MS = 700 // a finger that touches twice has not read what stands under it now

/** Whoever may change the case may remove its images and say that nobody is named in one. */
export const mayKeep = () => membership.value?.role !== 'coordinator'

/** Removing takes two touches: the second says why, and counts only after a moment. */
export function Remove({ asked, onAsk, ...reasons }: Props) {
  if (!mayKeep()) return null
  return (
    <div class="stack close">
      {asked && <Reasons {...reasons} />}
      <button type="button" class="button" onClick={() => onAsk(!asked)}>
        {asked ? words.images.remove.keep : words.images.remove.open}
      </button>
    </div>
  )
}

/** Removing where nothing else is asked. */
export function RemoveAlone({ onRemove }: Pick<Props, 'onRemove'>) {
  const [asked, setAsked] = useState(false)
  return <Remove asked={asked} onAsk={setAsked} onRemove={onRemove} />
}

function Reasons({ busy = false, onRemove }: Pick<Props, 'busy' | 'onRemove'>) {
  const [ready, setReady] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setReady(true), SLIP_MS)
    return () => clearTimeout(timer)
  }, [])
  return (
    <div class="stack close image-remove">
      <p class="strong">{words.images.remove.why}</p>
      {Object.entries(words.images.remove.reasons).map(([reason, why]) => (
        <button
          key={reason}
          type="button"
          class="button"
          disabled={busy || !ready}
          onClick={() => onRemove(reason as RemovalReason)}
        >
          {why}
        </button>
      ))}
    </div>
  )
}
