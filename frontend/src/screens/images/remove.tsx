import { useState } from 'preact/hooks'
import type { RemovalReason } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { membership } from '@/store/session'
import { words } from '@/words/en'

interface Props {
  /** What the first touch is called. */
  says?: string
  busy?: boolean
  onRemove: (reason: RemovalReason) => void
}

/** Whoever may change the case may remove its images and say that nobody is named in one. */
export const mayKeep = () => membership.value?.role !== 'coordinator'

/** Removing takes two touches: the second says why, and under the first then lies the way back. */
export function Remove({ says = words.images.remove.open, busy = false, onRemove }: Props) {
  const [asked, setAsked] = useState(false)
  if (!mayKeep()) return null
  if (!asked) {
    return (
      <button type="button" class="button" onClick={() => setAsked(true)}>
        {says}
      </button>
    )
  }
  return (
    <div class="stack close">
      <button type="button" class="button" onClick={() => setAsked(false)}>
        {words.images.remove.keep}
      </button>
      <Notice sign="stop">{words.images.remove.why}</Notice>
      {Object.entries(words.images.remove.reasons).map(([reason, why]) => (
        <button
          key={reason}
          type="button"
          class="button"
          disabled={busy}
          onClick={() => onRemove(reason as RemovalReason)}
        >
          {why}
        </button>
      ))}
    </div>
  )
}
