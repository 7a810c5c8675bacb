import type { Chair } from '@/store/chair'
import { lastToUndo } from '@/store/undo'
import { words } from '@/words/en'
import { saidOf } from './said'
import { useNow } from './use-now'

const SECONDS_10 = 10_000 // how long after its ten minutes an undo may still be seen

/** One's own last entry on the canal, and what taking it back would take back; gone after ten minutes. */
export function UndoBar({ chair, canal }: { chair: Chair; canal: string }) {
  const now = useNow(SECONDS_10)
  const last = lastToUndo(chair, canal, now)
  if (!last) return null
  const undo = () => void chair.record(canal, '', { kind: 'undo', undoes: last.id })
  return (
    <button type="button" class="button undo" onClick={undo}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d="M9 5 4 10l5 5M4 10h10a6 6 0 0 1 0 12h-3" fill="none" stroke="currentColor" stroke-width="2.2" />
      </svg>
      <span>{words.card.undo(saidOf(chair, last))}</span>
    </button>
  )
}
