import type { Happened } from '@/walk/happened'
import type { Chair } from './chair'

/** Images that supervisors asked for and that have not come: the last ask of each canal, in their order. */
export function wantedImages({ events, course }: Pick<Chair, 'events' | 'course'>): readonly Happened[] {
  const counting = events.filter((event) => !course.undone.has(event.id))
  const open = new Map<string, Happened>()
  for (const event of counting) {
    if (event.kind === 'wanted') open.set(event.canal, event)
    else if (answersIt(event)) open.delete(event.canal)
  }
  return [...open.values()]
}

/** An image, why there is none, or a word that did not wait for it. */
function answersIt({ kind, body }: Happened): boolean {
  return kind === 'image' || kind === 'sign_off' || (kind === 'step' && typeof body.no_image === 'string')
}
