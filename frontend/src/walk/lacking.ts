import type { Lacking, RunSheet } from '@/api/shapes'
import type { CanalProgress } from './canal-progress'
import type { CourseEvent } from './course-event'
import { concernsImage, movedTo, putRight } from './put-right'

const NO_LENGTH = ['missing', 'estimated']

/** What the hold point lacks that the canal waits at, by the server's rule; empty for a canal that waits at none. */
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
 * Whether an image is lacking: since the last sign-off that counts, an image step named neither an image nor a reason, and
 * no image was recorded besides. A struck image does not count, nor one of another canal; one put to this canal does.
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
