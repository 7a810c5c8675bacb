import type { Chair } from '@/store/chair'
import { sinceLastWord } from '@/store/hold'
import { words } from '@/words/en'
import { ImagesOf } from '../images/images-of'

/** The images that were taken of the canal since the last word on it, each opening larger. */
export function Images({ chair, canal }: { chair: Chair; canal: string }) {
  const ids = sinceLastWord(chair, canal).flatMap(({ id, told }) =>
    told.kind === 'image' && !chair.course.undone.has(id) ? [told.image_id] : [],
  )
  return (
    <section class="stack close">
      <h2>{words.hold.images}</h2>
      {ids.length === 0 && <p class="soft">{words.hold.noImages}</p>}
      <ImagesOf caseId={chair.version.case} ids={ids} />
    </section>
  )
}
