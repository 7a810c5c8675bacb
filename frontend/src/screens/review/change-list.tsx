import type { Caution, Change } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { words } from '@/words/en'
import '@/parts/difference/difference.css'

interface Props {
  changes: readonly Change[]
  came: readonly Caution[]
  went: readonly Caution[]
}

/** What changed since the version last decided on: the old struck through, the new after it; cautions that came or went. */
export function ChangeList({ changes, came, went }: Props) {
  return (
    <ul class="difference">
      {changes.map((change) => (
        <li key={change.what + change.subject}>
          {words.review.what(change.what)} {change.subject && <span class="small">{change.subject}</span>}{' '}
          <del>
            <span class="unseen">{words.difference.was}</span>
            {words.review.value(change.before)}
          </del>{' '}
          <span aria-hidden="true">→</span>{' '}
          <ins>
            <span class="unseen">{words.difference.is}</span>
            {words.review.value(change.after)}
          </ins>
        </li>
      ))}
      {came.map((caution) => (
        <li key={`came ${caution.code}${caution.says}`}>
          <Sign name={caution.severity} /> {words.review.cautionCame} {caution.says}
        </li>
      ))}
      {went.map((caution) => (
        <li key={`went ${caution.code}${caution.says}`}>
          {words.review.cautionWent} <del>{caution.says}</del>
        </li>
      ))}
    </ul>
  )
}

export const TakenAway = () => <p class="small">{words.review.went}</p>
