import { ImagesOf } from '@/panels/images/images-of'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { sinceLastWord } from '@/store/chair/hold'
import { imagesSince } from '@/store/chair/image-of-step'
import { lackingAt } from '@/store/chair/lacking'
import { words } from '@/words/en'

/** The images that were taken of the canal since the last word on it, each opening larger. */
export function Images({ chair, canal }: { chair: Chair; canal: string }) {
  const since = sinceLastWord(chair, canal)
  const ids = imagesSince(chair, canal)
  const step = since.findLast(({ id, told }) => told.kind === 'step' && told.no_image && !chair.course.undone.has(id))
  const reason = step?.told.kind === 'step' ? step.told.no_image : undefined
  return (
    <section class="stack close">
      <h2>{words.hold.images}</h2>
      {lackingAt(chair, canal).includes('image') ? (
        <Notice sign="caution">{words.hold.lackingSeen.image}</Notice>
      ) : (
        ids.length === 0 && <p class="soft">{reason ? words.hold.noImage[reason] : words.hold.noImages}</p>
      )}
      <ImagesOf caseId={chair.version.case} ids={ids} />
    </section>
  )
}
