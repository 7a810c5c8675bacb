import type { ImageShown, MarkingShown } from '@/api/shapes'
import { MarkedList } from '@/panels/marks/marked-list'
import { Sign } from '@/parts/signs'
import type { WaitingImage } from '@/store/images/images'
import { words } from '@/words/en'
import { nameOf } from './name-of'

/** An image that was removed: what it showed, why it went, and who removed it. */
export function Removed({ image }: { image: ImageShown }) {
  const { removed_for, removed_by, removed_at } = image
  return (
    <p class="image-removed small">
      <Sign name="stop" />
      <span class="grow">
        <b>{nameOf(image)}.</b> {removed_for && words.images.remove.said(words.images.remove.reasons[removed_for])}{' '}
        {removed_by && removed_at && words.images.remove.by(removed_by.name, words.when(removed_at))}
      </span>
    </p>
  )
}

/** An image that was thrown away on this phone; the server does not know yet. */
export function Thrown({ image }: { image: WaitingImage }) {
  return (
    <p class="image-removed small">
      <Sign name="waiting" />
      <span class="grow">
        <b>{nameOf(image)}.</b> {image.thrown && words.images.remove.said(words.images.remove.reasons[image.thrown])}{' '}
        {words.images.remove.untold}
      </span>
    </p>
  )
}

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
