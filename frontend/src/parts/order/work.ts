import type { CanalPlan, Do } from '@/api/shapes'

export interface WorkStep {
  readonly key: string
  readonly node: Do
  /** Irrigation and recapitulation that belong to the instrument before them. */
  readonly after: readonly Do[]
}

export interface WorkPhase {
  readonly phase: string
  readonly pass: number
  readonly steps: readonly WorkStep[]
}

const FOLLOWS = new Set(['irrigate', 'recapitulate'])

/** A canal's expected way through its run sheet, by phase; a phase that is walked again is the next pass. */
export function workOf(canal: CanalPlan): WorkPhase[] {
  const phases: { phase: string; pass: number; steps: { key: string; node: Do; after: Do[] }[] }[] = []
  const passes = new Map<string, number>()
  for (const [i, id] of canal.expected_path.entries()) {
    const node = canal.run_sheet.nodes[id]
    if (node?.kind !== 'do') continue
    let last = phases.at(-1)
    if (last?.phase !== node.phase) {
      const pass = (passes.get(node.phase) ?? 0) + 1
      passes.set(node.phase, pass)
      last = { phase: node.phase, pass, steps: [] }
      phases.push(last)
    }
    const before = last.steps.at(-1)
    if (FOLLOWS.has(node.action) && before) before.after.push(node)
    else last.steps.push({ key: `${i}${id}`, node, after: [] })
  }
  return phases
}
