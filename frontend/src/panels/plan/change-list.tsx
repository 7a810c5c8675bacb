import type { Caution, Change } from '@/api/shapes'
import { FromTo } from '@/parts/difference/difference-view'
import { Sign } from '@/parts/signs'
import { words } from '@/words/en'

interface Props {
  changes: readonly Change[]
  came: readonly Caution[]
  went: readonly Caution[]
}

const isProgress = (change: Change) => change.bears_on === 'progress'

/**
 * What changed since the version last decided on, the most dangerous first: cautions that came, then the old struck
 * through and the new after it. What only says how far the work has come is folded away.
 */
export function ChangeList({ changes, came, went }: Props) {
  const progress = changes.filter(isProgress)
  return (
    <>
      <ul class="difference">
        {came.map((caution) => (
          <li key={`came ${caution.code}${caution.says}`}>
            <Sign name={caution.severity} /> {words.review.cautionCame} {caution.says}
          </li>
        ))}
        {changes
          .filter((change) => !isProgress(change))
          .map((change) => (
            <One key={keyOf(change)} of={change} />
          ))}
        {went.map((caution) => (
          <li key={`went ${caution.code}${caution.says}`}>
            {words.review.cautionWent} <del>{caution.says}</del>
          </li>
        ))}
      </ul>
      {progress.length > 0 && (
        <details class="difference-more">
          <summary>{words.review.progress(progress.length)}</summary>
          <ul class="difference">
            {progress.map((change) => (
              <One key={keyOf(change)} of={change} />
            ))}
          </ul>
        </details>
      )}
    </>
  )
}

const keyOf = (change: Change) => change.path || change.what + change.subject

function One({ of }: { of: Change }) {
  return (
    <li>
      {of.label} {of.subject && <span class="small">{of.subject} </span>}
      <FromTo from={words.review.value(of.before, of.unit)} to={words.review.value(of.after, of.unit)} />
    </li>
  )
}

export const TakenAway = () => <p class="small">{words.review.went}</p>
