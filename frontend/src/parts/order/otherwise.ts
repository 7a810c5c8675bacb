import type { CanalPlan, Do } from '@/api/shapes'
import { type Exit, Walk } from '@/walk/walk'

export interface Otherwise {
  /** What is done when a step is left by another exit than the expected one, as far as one can say beforehand. */
  readonly steps: readonly Do[]
  /** Where it leads then: to the same step again, to the supervisor, or on. */
  readonly then: 'again' | 'supervisor' | 'on'
}

const FOLLOWS = new Set(['irrigate', 'recapitulate'])
const MOST = 4 // more than this nobody reads before it happens

/** What follows if a step is left by `exit` the first time; undefined where it has no such exit. */
export function otherwise({ run_sheet }: CanalPlan, id: string, exit: Exit): Otherwise | undefined {
  const walk = new Walk(run_sheet)
  if (!walk.goTo(id) || !walk.leave(exit, null)) return undefined
  const steps: Do[] = []
  let then: Otherwise['then'] = 'on'
  while (walk.node.kind === 'do' && steps.length < MOST) {
    const { node } = walk
    if (node.id === id) then = 'again'
    if (node.action === 'sign_off') then = 'supervisor'
    if (then !== 'on' || (steps.length > 0 && node.phase !== steps[0]?.phase)) break
    if (!FOLLOWS.has(node.action) || exit === 'blocked') steps.push(node)
    const [first] = (['reached', 'done'] as const).filter((way) => way in node.exits)
    if (!first || !walk.leave(first, null)) break
  }
  return { steps, then }
}
