import { useEffect } from 'preact/hooks'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair'
import { words } from '@/words/en'
import { Resume } from './withheld'

/** An emergency: first the person in the room, then what to do, then whether anybody elsewhere knows. */
export function Halted({ chair }: { chair: Chair }) {
  const event = chair.events.find((one) => one.id === chair.course.haltedBy)
  const what = String(event?.body.what ?? '')
  useEffect(() => globalThis.scrollTo?.(0, 0), [event?.id])
  const unsent = chair.waiting.some((entry) => entry.event.id === event?.id)
  return (
    <section class="halted stack" role="alert">
      <h2>{words.chair.callNow}</h2>
      <p class="strong">
        {words.chair.emergencies[what]}. {words.chair.halted}
      </p>
      <p>{words.chair.first[what]}</p>
      <p class="small">{words.chair.whose}</p>
      <Notice sign={unsent ? 'stop' : 'approved'}>{unsent ? words.chair.notSentCall : words.chair.sent}</Notice>
      <Resume chair={chair} canal="" />
    </section>
  )
}
