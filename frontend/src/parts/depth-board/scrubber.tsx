import { words } from '@/words/en'
import './scrubber.css'

interface Props {
  /** How many insertions there are; one place before them and one past them are added. */
  steps: number
  at: number
  /** Where it stands, in a sentence. */
  says: string
  onMove: (at: number) => void
}

/** Steps through the work: back and on by buttons, or along a slider. */
export function Scrubber({ steps, at, says, onMove }: Props) {
  const last = steps + 1
  const go = (to: number) => onMove(Math.min(last, Math.max(0, to)))
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is sent
    <div class="scrubber not-on-paper" role="group" aria-label={words.expected.through}>
      <button type="button" class="button" disabled={at === 0} onClick={() => go(at - 1)}>
        <span aria-hidden="true">‹</span>
        <span class="unseen">{words.expected.back}</span>
      </button>
      <input
        type="range"
        min={0}
        max={last}
        step={1}
        value={at}
        aria-label={words.expected.through}
        aria-valuetext={says}
        onInput={(event) => go(event.currentTarget.valueAsNumber)}
      />
      <button type="button" class="button" disabled={at === last} onClick={() => go(at + 1)}>
        <span aria-hidden="true">›</span>
        <span class="unseen">{words.expected.on}</span>
      </button>
    </div>
  )
}
