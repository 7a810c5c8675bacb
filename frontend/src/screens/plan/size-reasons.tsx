import type { SizeReason } from '@/api/shapes'
import { Known } from '@/parts/known'
import { words } from '@/words/en'

/** Why the advised range is what it is: each reason with its source and how that is known. */
export function SizeReasons({ reasons }: { reasons: readonly SizeReason[] }) {
  return (
    <details>
      <summary>{words.planning.reasons}</summary>
      <ul class="ledger">
        {reasons.map((reason) => (
          <li key={reason.code + reason.says} class="stack close figure">
            <p>{reason.says}</p>
            <p class="small soft">{reason.source}</p>
            <Known know={reason.know} />
          </li>
        ))}
      </ul>
    </details>
  )
}
