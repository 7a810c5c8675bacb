import type { PlanChanges, VersionListed, VersionShown } from '@/api/shapes'
import { Decision } from '@/panels/plan/decision'
import { Sign } from '@/parts/signs'
import { words } from '@/words/en'

interface Props {
  of: VersionShown
  versions: readonly VersionListed[] | undefined
  changes?: PlanChanges | undefined
}

/** What the plan on the screen answers: the last return of it or of a canal, and whether each remark is answered. */
export function SaidLast({ of, versions, changes }: Props) {
  const answered = of.state === 'waiting' || of.state === 'draft' ? lastReturn(of, versions ?? []) : undefined
  if (!answered) return null
  return (
    <section class="stack close">
      <h2>{words.acknowledge.answers}</h2>
      <Decision of={answered} counts={answered.reviews.at(-1)?.decision === 'returned'} />
      {changes &&
        answered.reviews[0]?.remarks.map(({ canal }) => {
          const moves = changes.canals.some((each) => each.canal === canal)
          return (
            <p key={canal} class="small">
              <Sign name={moves ? 'approved' : 'caution'} /> {words.review.answered(canal, moves)}
            </p>
          )
        })}
    </section>
  )
}

/** The version that was last decided on before this asking, with that decision alone; undefined where it was no return. */
function lastReturn(of: VersionShown, versions: readonly VersionListed[]): VersionListed | undefined {
  const decided = versions
    .filter((version) => version.number <= of.number)
    .flatMap((version) => version.reviews.map((review) => ({ ...version, reviews: [review] })))
    .toSorted((a, b) => (a.reviews[0]?.at ?? '').localeCompare(b.reviews[0]?.at ?? ''))
  const last = decided.at(-1)
  const review = last?.reviews[0]
  const returns = review?.decision === 'returned' || review?.remarks.some((remark) => remark.returned)
  return returns ? last : undefined
}
