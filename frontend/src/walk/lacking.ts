import type { RunSheet } from '@/api/shapes'
import type { CanalCourse } from './canal-course'
import type { Happened } from './happened'

/** What a hold point is about and is not there; a supervisor may let it pass in spite. */
export type Lacking = 'length' | 'image'

const NO_LENGTH = ['missing', 'estimated']

/** Of the hold point that the canal waits at, by the rule that the server marks by. */
export function lacking(
  name: string,
  canal: CanalCourse,
  length: string,
  events: readonly Happened[],
  sheet: RunSheet,
  undone: ReadonlySet<string>,
): Lacking[] {
  const { node } = canal.walk
  if (canal.state !== 'hold_point' || node.kind === 'end') return []
  const found: Lacking[] = []
  if (node.hold_point?.startsWith('length') && NO_LENGTH.includes(length)) found.push('length')
  if (unshown(name, events, sheet, undone)) found.push('image')
  return found
}

/** Whether an image step since the last word names no image and no reason, and none was recorded beside it. */
function unshown(name: string, events: readonly Happened[], sheet: RunSheet, undone: ReadonlySet<string>): boolean {
  let open = false
  let taken = false
  for (const { id, kind, canal, node, body } of events) {
    if (canal !== name || undone.has(id)) continue
    if (kind === 'sign_off') open = taken = false
    else if (kind === 'image') taken = true
    else if (kind === 'step' && isImage(sheet, node)) open = !(body.image_id || body.no_image)
  }
  return open && !taken
}

function isImage({ nodes }: RunSheet, id: string): boolean {
  const node = Object.hasOwn(nodes, id) ? nodes[id] : undefined
  return node?.kind === 'do' && node.action === 'image'
}
