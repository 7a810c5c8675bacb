import { words } from '@/words/en'
import type { Change } from './compare'
import './difference.css'

/** What changed, canal by canal: the old value struck through, the new one after it. */
export function DifferenceView({ changes }: { changes: readonly Change[] }) {
  if (changes.length === 0) return <p class="soft">{words.difference.nothing}</p>
  return (
    <ul class="difference">
      {changes.map((change) => (
        <li key={`${change.canal}${change.what}`}>
          <b>{change.canal ?? words.difference.tooth}</b> {change.what}{' '}
          <del>
            <span class="unseen">{words.difference.was}</span>
            {change.from}
          </del>{' '}
          <span aria-hidden="true">→</span>{' '}
          <ins>
            <span class="unseen">{words.difference.is}</span>
            {change.to}
          </ins>
        </li>
      ))}
    </ul>
  )
}
