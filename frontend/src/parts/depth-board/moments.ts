import type { ExpectedStep, TrayOrder } from '@/api/shapes'
import type { BoardCanal } from './shape'

/** One insertion, as stepping through the work comes to it. */
export interface Moment {
  readonly canal: string
  /** Its place among the canal's own steps, from 0. */
  readonly index: number
  readonly step: ExpectedStep
}

/** The insertions of one canal in the order expected. */
export function ofCanal({ canal, expectation }: BoardCanal): Moment[] {
  return (expectation?.steps ?? []).map((step, index) => ({ canal, index, step }))
}

/** The insertions of all canals in the order in which the tray takes up the instruments. */
export function atTray(canals: readonly BoardCanal[], tray: TrayOrder): Moment[] {
  const next = new Map(canals.map((c) => [c.canal, 0]))
  return tray.steps.flatMap(({ instrument, canals: served }) =>
    served.flatMap((canal): Moment[] => {
      const steps = canals.find((c) => c.canal === canal)?.expectation?.steps ?? []
      const index = steps.findIndex((step, i) => i >= (next.get(canal) ?? 0) && step.instrument === instrument)
      const step = steps[index]
      if (!step) return []
      next.set(canal, index + 1)
      return [{ canal, index, step }]
    }),
  )
}

/** How far the work has come in each canal that it concerns, and the insertion just made. */
export interface DrawnProgress {
  readonly done: ReadonlyMap<string, number>
  readonly now: Moment | undefined
}

/** After `at` of the moments; nothing past the last one, where the board shows the plan as a whole. */
export function progressAt(moments: readonly Moment[], at: number): DrawnProgress | undefined {
  if (at > moments.length) return undefined
  const done = new Map(moments.map((m) => [m.canal, 0]))
  for (const { canal, index } of moments.slice(0, at)) done.set(canal, index + 1)
  return { done, now: moments[at - 1] }
}
