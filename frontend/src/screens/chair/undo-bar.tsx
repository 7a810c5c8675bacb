import { useAsked } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import { lastToUndo } from '@/store/chair/undo'
import { words } from '@/words/en'
import { withCanal } from './said'
import { useNow } from './use-now'

const SECONDS_10 = 10_000 // how long after its ten minutes an undo may still be seen

interface Props {
  chair: Chair
  canal: string
  /** A turn to this canal was taken back. */
  onTurnedBack: () => void
}

/** One's own last entry, and what taking it back would take back; gone after ten minutes. */
export function UndoBar({ chair, canal, onTurnedBack }: Props) {
  const now = useNow(SECONDS_10)
  const last = lastToUndo(chair, canal, now)
  useAsked(last?.id)
  if (!last) return null
  const undo = async () => {
    if ((await chair.record(last.canal, '', { kind: 'undo', undoes: last.id })) && last.kind === 'turn') onTurnedBack()
  }
  return (
    <button type="button" class="button undo" onClick={() => void undo()}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d="M9 5 4 10l5 5M4 10h10a6 6 0 0 1 0 12h-3" fill="none" stroke="currentColor" stroke-width="2.2" />
      </svg>
      <span>{words.card.undo(withCanal(chair, last))}</span>
    </button>
  )
}
