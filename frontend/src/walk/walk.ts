import type { Ask, CanalPlan, Ending, RunSheet, SheetStep, WaitsFor } from '@/api/shapes'

/** The app is older than the run sheet: it must be brought up to date before work goes on. */
export class TooNew extends Error {}

export type Exit = keyof SheetStep['exits'] & string

/** How a step was left, and which time it was come to, from 1. */
export interface Left {
  readonly node: string
  readonly pass_number: number
  readonly exit: Exit
  /** Where the tip stopped, in micrometres; null where no depth was given. */
  readonly depth_um: number | null
}

/**
 * A walk along one canal's run sheet. `at` is always a step to do or an end: questions are answered on the way.
 * Depths are whole micrometres, compared and never computed, but for the stop of an instrument that makes room.
 */
export class Walk {
  at = ''
  /** What was answered so far. */
  readonly left: Left[] = []
  private readonly passes = new Map<string, number>()
  /** Depths at every pass of an instrument step; null where it stopped short and no depth was given. */
  private readonly depths = new Map<string, (number | null)[]>()

  constructor(readonly sheet: RunSheet) {
    for (const [node, count] of Object.entries(sheet.walked_before?.passes ?? {})) this.passes.set(node, count)
    for (const [node, each] of Object.entries(sheet.walked_before?.depths_um ?? {})) this.depths.set(node, each)
    this.go(sheet.start)
  }

  get node(): SheetStep | Ending {
    return this.found(this.at) as SheetStep | Ending
  }

  /** Stop of the present step in micrometres. */
  stop(): number | null {
    const { node } = this
    if (node.kind === 'end' || node.stop_um === null) return null
    if (!node.shorter_than) return node.stop_um
    // Where the other instrument's depth is not known the step's own stop holds, and that stop is never exceeded.
    const last = this.depths.get(node.shorter_than.node)?.at(-1)
    return last == null ? node.stop_um : Math.min(node.stop_um, last - node.shorter_than.less_um)
  }

  /** What the present step waits for in other canals, met or not; none in older plans. */
  get waitsFor(): readonly WaitsFor[] {
    return waitsOf(this.node)
  }

  /** Whether the canal has come far enough for another one that waits for it. */
  meets({ phases, nodes }: WaitsFor): boolean {
    const { node } = this
    if (node.kind === 'end') return node.outcome === 'finished'
    return phases.includes(node.phase) || (nodes ?? []).includes(node.id)
  }

  /** Where an instrument last stopped at this step; null where it was not there or no depth was given. */
  last(id: string): number | null {
    return this.depths.get(id)?.at(-1) ?? null
  }

  /** Answers the present step; false where it has no such exit. A depth at the stop or beyond counts as reached. */
  leave(exit: string, depth: number | null): boolean {
    const { node } = this
    if (node.kind === 'end') return false
    const stop = this.stop()
    // What was measured decides, not the button: a depth at the stop is the stop.
    const left = (exit === 'short' && depth !== null && stop !== null && depth >= stop ? 'reached' : exit) as Exit
    const next = node.exits[left]
    if (next === undefined) return false
    this.left.push({ node: node.id, pass_number: this.passes.get(node.id) ?? 1, exit: left, depth_um: depth })
    // Every pass leaves an entry, also one without a depth, so that `gained` compares one pass with the one before it.
    if (left === 'reached' || left === 'short') {
      const before = this.depths.get(node.id) ?? []
      this.depths.set(node.id, [...before, left === 'reached' && depth === null ? stop : depth])
    }
    this.go(next)
    return true
  }

  /** Goes on at a step that a supervisor names; false where the sheet has no such step. */
  goTo(id: string): boolean {
    if (this.sheet.nodes[id]?.kind !== 'do') return false
    this.go(id)
    return true
  }

  /** Takes back the last answer, which must not be a depth: the walk stands at the step that it answered. */
  takeBack() {
    const last = this.left.pop()
    if (!last) return
    this.passes.set(this.at, (this.passes.get(this.at) ?? 1) - 1)
    this.at = last.node
  }

  private go(id: string) {
    let node = this.found(id)
    // This ends: the server has proved that no sheet has a round of questions alone.
    while (node.kind === 'ask') {
      const next = node.exits[this.answer(node) ? 'yes' : 'no']
      if (next === undefined) throw new TooNew(node.id)
      node = this.found(next)
    }
    this.at = node.id
    this.passes.set(node.id, (this.passes.get(node.id) ?? 0) + 1)
  }

  private found(id: string): SheetStep | Ask | Ending {
    const node = this.sheet.nodes[id]
    if (node?.kind !== 'do' && node?.kind !== 'ask' && node?.kind !== 'end') throw new TooNew(id)
    return node
  }

  private answer({ id, question }: Ask): boolean {
    switch (question.test) {
      case 'passes_below':
        return (this.passes.get(question.node) ?? 0) < question.n
      case 'at_length':
        return question.nodes.every((node) => this.atLength(node))
      case 'gained':
        return question.nodes.some((node) => this.gained(node, question.least_um))
      default:
        throw new TooNew(id)
    }
  }

  private atLength(id: string): boolean {
    const node = this.found(id)
    const last = this.depths.get(id)?.at(-1)
    return node.kind === 'do' && node.stop_um !== null && last != null && last >= node.stop_um
  }

  /** In the first pass there is nothing to compare with, and unknown depths are taken as a gain. */
  private gained(id: string, least: number): boolean {
    const depths = this.depths.get(id) ?? []
    if (depths.length < 2) return true
    const [before = null, now = null] = depths.slice(-2)
    return before === null || now === null || now - before >= least
  }
}

/** What a step waits for in other canals. */
export function waitsOf(node: SheetStep | Ask | Ending | undefined): readonly WaitsFor[] {
  return node?.kind === 'do' ? (node.waits_for ?? []) : []
}

/** Which step of the canal this is, and of about how many: those done, and those left on the expected way. */
export function placeOf({ expected_path, run_sheet }: CanalPlan, walk: Walk): { step: number; about: number } {
  const done = walk.left.length
  const path = expected_path.filter((id) => run_sheet.nodes[id]?.kind === 'do')
  const rest = path.length - Math.max(0, indexOf(path, walk))
  return { step: done + 1, about: done + rest }
}

/** Where on the expected way the present step stands this time; its last place there once it is worked more often. */
function indexOf(path: readonly string[], walk: Walk): number {
  const passes = walk.left.filter(({ node }) => node === walk.at).length + 1
  const places = path.flatMap((id, i) => (id === walk.at ? [i] : []))
  return places[Math.min(passes, places.length) - 1] ?? Math.min(walk.left.length, path.length - 1)
}
