import type { Lacking, RunSheet } from '@/api/shapes'
import type { CanalProgress } from './canal-progress'
import type { CourseEvent } from './course-event'
import { concernsImage, movedTo, putRight } from './put-right'

const NO_LENGTH = ['missing', 'estimated']

/** Of the hold point that the canal waits at, by the rule that the server marks by. */
export function lacking(
  name: string,
  canal: CanalProgress,
  length: string,
  events: readonly CourseEvent[],
  sheet: RunSheet,
  undone: ReadonlySet<string>,
): Lacking[] {
  const { node } = canal.walk
  if (canal.state !== 'hold_point' || node.kind === 'end') return []
  const lacking: Lacking[] = []
  if (node.hold_point?.startsWith('length') && NO_LENGTH.includes(length)) lacking.push('length')
  if (unshown(name, events, sheet, new Set([...undone, ...canal.reopened]))) lacking.push('image')
  return lacking
}

/**
 * Whether an image step since the last sign-off that counts names no image and no reason, and none was recorded beside it.
 * An image that was struck, or that belongs to another canal, is none; one put to this canal is one.
 */
function unshown(name: string, events: readonly CourseEvent[], sheet: RunSheet, undone: ReadonlySet<string>): boolean {
  let open = false
  let taken = false
  const every = events.filter(({ id }) => !undone.has(id))
  const counts = putRight(every)
  for (const event of every) {
    if (concernsImage(event) && movedTo(event) === name) taken ||= counts(event.payload.struck, name)
    if (event.canal !== name) continue
    if (event.kind === 'sign_off') open = taken = false
    else if (event.kind === 'image') taken ||= counts(event.payload.image_id, name)
    else if (event.kind === 'step' && isImage(sheet, event.node))
      open = !(counts(event.payload.image_id, name) || event.payload.no_image)
  }
  return open && !taken
}

function isImage({ nodes }: RunSheet, id: string): boolean {
  const node = Object.hasOwn(nodes, id) ? nodes[id] : undefined
  return node?.kind === 'do' && node.action === 'image'
}
