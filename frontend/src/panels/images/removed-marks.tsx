import type { ImageShown, MarkingShown } from '@/api/shapes'
import { MarkedList } from '@/panels/marks/marked-list'
import { words } from '@/words/en'
import { Removed } from './removed'

interface Props {
  caseId: string
  image: ImageShown
  markings: readonly MarkingShown[]
}

/** An image that was removed, and what was measured on it while it was here. */
export function RemovedMarks({ caseId, image, markings }: Props) {
  return (
    <>
      <Removed image={image} />
      {markings.length === 0 && <p class="soft">{words.images.remove.unmarked}</p>}
      <MarkedList caseId={caseId} markings={markings} />
    </>
  )
}
