import { Known } from '@/parts/known'
import { words } from '@/words/en'
import type { BoardCanal } from './shape'

/** What the estimate is worth: that the hand wins, where the widths are from, and where it is weak. */
export function AboutEstimate({ canals }: { canals: readonly BoardCanal[] }) {
  const estimated = canals.flatMap(({ canal, expectation }) => (expectation ? [{ canal, ...expectation }] : []))
  const natural = new Map(estimated.map((one) => [one.natural.source, one.natural]))
  const narrow = estimated.filter((one) => one.narrows).map((one) => one.canal)
  const bent = estimated.filter((one) => one.steps.some((step) => step.as_if_straight)).map((one) => one.canal)
  return (
    <div>
      {bent.length > 0 && <p class="small">{words.expected.bent(bent)}</p>}
      <p class="small soft">{words.expected.hint}</p>
      <details>
        <summary class="small">{words.expected.about}</summary>
        <div class="stack close small">
          {[...natural.values()].map(({ source, know }) => (
            <div key={source}>
              <p class="soft">{words.expected.natural(source)}</p>
              <Known know={know} />
            </div>
          ))}
          {narrow.length > 0 && <p class="soft">{words.expected.narrows(narrow)}</p>}
        </div>
      </details>
    </div>
  )
}
