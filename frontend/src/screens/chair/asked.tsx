import { Notice } from '@/parts/notice'
import { useAsked } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import { shownEvent } from '@/store/chair/hold'
import { membership } from '@/store/session/session'
import type { CanalProgress } from '@/walk/course'
import { words } from '@/words/en'

/** The student was not sure at this step and asked; a supervisor says that they come, and the student sees it. */
export function Asked({ chair, canal, course }: { chair: Chair; canal: string; course: CanalProgress }) {
  const asked = shownEvent(chair, course.asking)
  const comes = shownEvent(chair, course.coming)
  // What is said of it moves what stands below.
  useAsked([course.asking, asked?.id, comes?.id].join())
  if (course.asking === null || course.state === 'hold_point') return null
  if (comes) return <Notice sign="approved">{words.hold.comes(comes.actor.name)}</Notice>
  if (!asked) return <Notice sign="stop">{words.card.askedNotSent}</Notice>
  if (membership.value?.role !== 'supervisor') return <Notice sign="waiting">{words.card.asked}</Notice>
  const come = () => void chair.record(canal, course.walk.at, { kind: 'come', note: '' })
  return (
    <Notice sign="waiting" action={{ says: words.hold.come, onDo: come }}>
      {words.hold.asks(asked.actor.name, words.when(asked.server_time))}
    </Notice>
  )
}
