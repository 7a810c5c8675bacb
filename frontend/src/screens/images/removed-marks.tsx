import type { ImageShown, MarkingShown } from '@/api/shapes'
import { words } from '@/words/en'
import { MarkedSays } from '../marks/made'
import { Removed } from './removed'

/** An image that was removed, and what was measured on it while it was here. */
export function RemovedMarks({ image, markings }: { image: ImageShown; markings: readonly MarkingShown[] }) {
  return (
    <>
      <Removed image={image} />
      {markings.length === 0 && <p class="soft">{words.images.remove.unmarked}</p>}
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
