import type { VersionShown } from '@/api/shapes'
import { CaseRow } from '@/panels/case-row'
import { Fold } from '@/parts/fold'
import { Seen } from '@/parts/seen'
import { useCasesOf } from '@/store/cache/cases'
import { words } from '@/words/en'
import '@/parts/list.css'

/** The last cases of the student whose plan is decided on, for whoever wants to see them. */
export function EarlierCases({ of }: { of: VersionShown }) {
  return (
    <Fold says={words.review.earlier(of.author.name)}>
      <Rows student={of.author.id} but={of.case_id} />
    </Fold>
  )
}

function Rows({ student, but }: { student: string; but: string }) {
  return (
    <Seen of={useCasesOf(student)} rows={2}>
      {({ results }) => {
        const others = results.filter(({ id }) => id !== but)
        if (others.length === 0) return <p class="small soft">{words.review.noOthers}</p>
        return (
          <ul class="ledger">
            {others.map((row) => (
              <li key={row.id}>
                <CaseRow of={row} />
              </li>
            ))}
          </ul>
        )
      }}
    </Seen>
  )
}
