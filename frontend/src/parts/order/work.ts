import type { CanalPlan, ExpectedStep, SheetStep } from '@/api/shapes'
import { type Exit, Walk } from '@/walk/walk'

export interface WorkStep {
  readonly key: string
  readonly node: SheetStep
  /** What is expected of it, and its place among the canal's expected steps; nothing where nothing is. */
  readonly expected: { readonly step: ExpectedStep; readonly index: number } | undefined
  /** Irrigation and recapitulation that belong to the instrument before them. */
  readonly after: readonly SheetStep[]
}

interface WorkPhase {
  readonly phase: string
  readonly pass: number
  readonly steps: readonly WorkStep[]
}

const FOLLOWS = new Set(['irrigate', 'recapitulate'])

/** A canal's expected way through its run sheet, by phase; a phase that is walked again is the next pass. */
export function workOf(canal: CanalPlan): WorkPhase[] {
  const phases: { phase: string; pass: number; steps: (WorkStep & { after: SheetStep[] })[] }[] = []
  const stepPasses = new Map<string, number>()
  const phasePasses = new Map<string, number>()
  for (const [i, id] of canal.expected_path.entries()) {
    const node = canal.run_sheet.nodes[id]
    if (node?.kind !== 'do') continue
    const passNumber = (stepPasses.get(id) ?? 0) + 1
    stepPasses.set(id, passNumber)
    let last = phases.at(-1)
    if (last?.phase !== node.phase) {
      const pass = (phasePasses.get(node.phase) ?? 0) + 1
      phasePasses.set(node.phase, pass)
      last = { phase: node.phase, pass, steps: [] }
      phases.push(last)
    }
    const before = last.steps.at(-1)
    if (FOLLOWS.has(node.action) && before) before.after.push(node)
    else last.steps.push({ key: `${i}${id}`, node, expected: expectedAt(canal, id, passNumber), after: [] })
  }
  return phases
}

function expectedAt({ expectation }: CanalPlan, node: string, passNumber: number): WorkStep['expected'] {
  const steps = expectation?.steps ?? []
  const index = steps.findIndex((step) => step.node === node && step.pass_number === passNumber)
  const step = steps[index]
  return step && { step, index }
}

interface Otherwise {
  /** What is done when a step is left by another exit than the expected one, as far as one can say beforehand. */
  readonly steps: readonly SheetStep[]
  /** Where it leads then: to the same step again, to the supervisor, or on. */
  readonly then: 'again' | 'supervisor' | 'on'
}

const MOST = 4 // more than this nobody reads before it happens

/** What follows if a step is left by `exit` the first time; undefined where it has no such exit. */
export function otherwise({ run_sheet }: CanalPlan, id: string, exit: Exit): Otherwise | undefined {
  const walk = new Walk(run_sheet)
  if (!walk.goTo(id) || !walk.leave(exit, null)) return undefined
  const steps: SheetStep[] = []
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
