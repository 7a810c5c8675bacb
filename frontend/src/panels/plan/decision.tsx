import type { VersionListed } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

interface Props {
  of: VersionListed
  /** Whether the decision still stands: an approval ends when the plan or the case changes. */
  counts: boolean
}

/** What the supervisor decided on a version and said of which canal; nothing where it is not decided. */
export function Decision({ of, counts }: Props) {
  const review = of.reviews.at(-1)
  if (!review) return null
  // A version that the phone kept from before approvals could be withdrawn has none.
  const withdrawn = of.revocations?.find(({ asked }) => asked === review.asked)
  return (
    <Notice sign={withdrawn ? 'stop' : counts ? review.decision : 'note'}>
      {withdrawn && (
        <p>
          <b>{words.revoke.was(withdrawn.by.name, words.when(withdrawn.at))}:</b> {withdrawn.reason}
        </p>
      )}
      <p class="strong">
        {words.planning.decided(of.number, review.decision, review.supervisor.name, words.when(review.at))}
      </p>
      {!counts && !withdrawn && review.decision === 'approved' && <p>{words.planning.over}</p>}
      {review.note && <p>{review.note}</p>}
      <ul>
        {review.remarks.map((remark) => (
          <li key={remark.canal}>
            <b>{remark.canal}:</b> {remark.returned && <b>{words.release.returned}: </b>}
            {remark.text}
          </li>
        ))}
        {/* One that the phone kept from before lengths could be compared has none. */}
        {review.own_lengths?.map(({ canal, length_mm }) => (
          <li key={`length ${canal}`}>{words.review.measured(review.supervisor.name, mm(length_mm), canal)}</li>
        ))}
      </ul>
    </Notice>
  )
}
