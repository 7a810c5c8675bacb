import type { VersionListed } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { words } from '@/words/en'

/** What the supervisor decided on a version and said of which canal; nothing where it is not decided. */
export function Decision({ of }: { of: VersionListed }) {
  const review = of.reviews.at(-1)
  if (!review) return null
  return (
    <Notice sign={review.decision}>
      <p class="strong">
        {words.planning.decided(of.number, review.decision, review.supervisor.name, words.when(review.at))}
      </p>
      {review.note && <p>{review.note}</p>}
      <ul>
        {review.remarks.map((remark) => (
          <li key={remark.canal}>
            <b>{remark.canal}:</b> {remark.text}
          </li>
        ))}
      </ul>
    </Notice>
  )
}
