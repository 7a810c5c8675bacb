import type { ImageShown, MarkingShown } from '@/api/shapes'
import { MarkedSays } from '../marks/made'
import { Removed } from './removed'

/** An image that was removed, and what was measured on it while it was here. */
export function RemovedMarks({ image, markings }: { image: ImageShown; markings: readonly MarkingShown[] }) {
  return (
    <>
      <Removed image={image} />
      <ul class="marks-made">
        {[...markings].reverse().map((one) => (
          <li key={one.id}>
            <MarkedSays one={one} markings={markings} />
          </li>
        ))}
      </ul>
    </>
  )
}
