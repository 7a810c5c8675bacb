import type { ImageShown } from '@/api/shapes'
import { EMPTY, hasMarks } from '@/panels/marks/draft'
import { Notice } from '@/parts/notice'
import { useDraft } from '@/store/cache/hooks'
import { words } from '@/words/en'

const says = words.images.putRight

export const draftName = (imageId: string) => `marks on ${imageId}`

/** Said over the marks of an image that somebody struck, or put to another canal, while it is marked or before. */
export function PutRightUnderHand({ image }: { image: ImageShown | undefined }) {
  // An answer that was kept from before images could be put right says nothing of it.
  const last = image?.put_right?.at(-1)
  if (!last) return null
  const by = words.images.remove.by(last.by.name, words.when(last.at))
  return last.struck ? (
    <Notice sign="stop">{words.marks.struck(says.why[last.why] ?? '', by)}</Notice>
  ) : (
    <Notice sign="caution">{words.marks.moved(last.canal || says.tooth, last.moved_to || says.tooth, by)}</Notice>
  )
}

/** Said where an image was removed and marks on it were not kept yet. */
export function RemovedUnderHand({ imageId }: { imageId: string }) {
  const { draft } = useDraft(draftName(imageId), () => ({ draft: EMPTY })).fields.value
  return hasMarks(draft) ? <Notice sign="stop">{words.marks.removed}</Notice> : null
}
