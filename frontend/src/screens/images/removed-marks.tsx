import type { ImageShown, MarkingShown } from '@/api/shapes'
import { words } from '@/words/en'
import { MarkedList } from '../marks/marked-list'
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
