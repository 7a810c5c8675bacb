import type { Chair } from '@/store/chair'
import { sinceLastWord } from '@/store/hold'
import { words } from '@/words/en'

/** The images that were recorded in the canal since the last word on it. */
export function Images({ chair, canal }: { chair: Chair; canal: string }) {
  const images = sinceLastWord(chair, canal).filter(
    ({ id, told }) => told.kind === 'image' && !chair.course.undone.has(id),
  )
  return (
    <section class="stack close">
      <h2>{words.hold.images}</h2>
      {images.length === 0 && <p class="soft">{words.hold.noImages}</p>}
      <ul>
        {images.map(({ id, told, server_time }) => (
          <li key={id}>
            {told.kind === 'image' &&
              words.hold.image(words.hold.shows[told.shows ?? 'other'] ?? '', words.when(server_time))}
          </li>
        ))}
      </ul>
    </section>
  )
}
