import { words } from '@/words/en'
import './known.css'

/** The mark of a reference value that has to be checked; its words stand beside it or in a legend. */
export function CheckMark() {
  return (
    <svg class="check-mark" viewBox="0 0 12 10" aria-hidden="true">
      <path
        d="M1 3.6q2.5-3 5 0t5 0M1 8.2q2.5-3 5 0t5 0"
        fill="none"
        stroke="currentColor"
        stroke-width="1.7"
        stroke-linecap="round"
      />
    </svg>
  )
}

/** How a figure is known: read, second-hand, from memory and to be checked, a programme's rule. */
export function Known({ know }: { know: string }) {
  return (
    <p class="known small" data-know={know.replace(/ /g, '-')}>
      {know === 'from memory' && <CheckMark />}
      {words.rationale.known(know)}
    </p>
  )
}
