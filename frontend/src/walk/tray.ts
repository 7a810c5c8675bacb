import type { CanalPlan, TrayOrder } from '@/api/shapes'
import type { CanalProgress } from './course'
import { waitsOf } from './walk'

/** What the order at the tray takes up next: an instrument and the canal it goes into. */
interface Next {
  readonly canal: string
  readonly instrument: string
}

/**
 * The open canal whose next instrument comes first in the order at the tray, with that instrument; undefined where no
 * canal has one ahead. It is a proposal: any canal may be turned to.
 */
export function nextAtTray(
  tray: TrayOrder,
  canals: readonly Pick<CanalPlan, 'canal' | 'expected_path'>[],
  courses: Readonly<Record<string, CanalProgress>>,
): Next | undefined {
  const ahead = canals.flatMap(({ canal, expected_path }) => {
    const course = courses[canal]
    if (course?.state !== 'open') return []
    const next = instrumentAhead(course, expected_path)
    if (!next) return []
    const served = tray.steps.flatMap((step, i) =>
      step.instrument === next.instrument && step.canals.includes(canal) ? [i] : [],
    )
    // A step that several canals share is listed under the phase of the first of them.
    const own = served.filter((i) => tray.steps[i]?.phase === next.phase)
    const places = own.length > 0 ? own : served
    // Gone round more often than expected: it still comes where the order had it last.
    const place = places[Math.min(next.time, places.length) - 1]
    return place === undefined ? [] : [{ canal, instrument: next.instrument, place }]
  })
  const [first] = ahead.sort((a, b) => a.place - b.place)
  return first && { canal: first.canal, instrument: first.instrument }
}

/** The instrument of the present step, or else the next one on the expected way, and which time it is taken up. */
function instrumentAhead(course: CanalProgress, path: readonly string[]) {
  const { walk } = course
  const made = walk.left.filter(({ node }) => node === walk.at).length
  const start = path.flatMap((id, i) => (id === walk.at ? [i] : []))
  const from = start[Math.min(made, start.length - 1)] ?? path.length
  for (const id of [walk.at, ...path.slice(from + 1)]) {
    const node = walk.sheet.nodes[id]
    // What follows a supervisor's sign-off is not taken up before it.
    if (node?.kind === 'end' || (node?.kind === 'do' && node.action === 'sign_off')) return undefined
    if (course.unmet(waitsOf(node)).length > 0) return undefined
    if (node?.kind === 'do' && node.action === 'instrument' && node.instrument) {
      const { phase, instrument } = node
      const before = walk.left.filter((left) => {
        const step = walk.sheet.nodes[left.node]
        return (
          step?.kind === 'do' && step.action === 'instrument' && step.instrument === instrument && step.phase === phase
        )
      })
      return { phase, instrument, time: before.length + 1 }
    }
  }
  return undefined
}
