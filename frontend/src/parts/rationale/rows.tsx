import type { RowUsed } from '@/api/shapes'
import { Known } from '@/parts/known'
import { words } from '@/words/en'
import { figureOf } from '@/words/rationale'
import '@/parts/list.css'

/** Figures with their source and how they are known. */
export function Rows({ rows }: { rows: readonly RowUsed[] }) {
  return (
    <ul class="ledger">
      {rows.map((row) => (
        <li key={row.key} class="stack close figure">
          <p class="row apart">
            <span>{words.rationale.figure(row.key)}</span>
            <span class="number">{figureOf(row.value, row.unit)}</span>
          </p>
          <p class="small soft">{row.programme ? words.rationale.programmeValue : row.source}</p>
          {!row.programme && <Known know={row.know} />}
        </li>
      ))}
    </ul>
  )
}
