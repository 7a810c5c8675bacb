import { TakeImage } from '@/panels/images/take-image'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { actorOf } from '@/store/chair/visits'
import { wantedImages } from '@/store/chair/wanted-images'
import { words } from '@/words/en'

/** A supervisor asks for an image: who and of which canal, and the way to take it. It stays until there is one. */
export function WantedImages({ chair }: { chair: Chair }) {
  return wantedImages(chair).map((event) => (
    <section key={event.id} class="stack close">
      <Notice sign="waiting">
        {words.look.wanted(actorOf(chair, event) || words.look.supervisor, event.canal)} {String(event.body.note ?? '')}
      </Notice>
      <TakeImage
        caseId={chair.caseId}
        canal={event.canal}
        purpose="other"
        onTaken={(image_id) => void chair.record(event.canal, '', { kind: 'image', image_id, purpose: 'other' })}
      />
    </section>
  ))
}
