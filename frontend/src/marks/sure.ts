import type { Mark } from './line'

/** The ends of an interval that holds the true value in the share of cases that is told. */
export type Within = readonly [least: number, most: number]

const STEP = 1e-3 // share of a slip that is tried out: small enough to be straight, large enough for doubles

/**
 * One standard deviation of a number where every mark is off by `slip` across and down, by the rule that the server
 * measures by (`planning/radiograph/spread.py`): first order, by differences.
 */
export function fromTapping(number: (marks: readonly Mark[]) => number, marks: readonly Mark[], slip: Mark): number {
  const slopes = marks.flatMap((_, i) =>
    ([0, 1] as const).map((axis) => {
      const step = slip[axis] * STEP
      return (number(shifted(marks, i, axis, step)) - number(shifted(marks, i, axis, -step))) / (2 * STEP)
    }),
  )
  return Math.hypot(...slopes)
}

function shifted(marks: readonly Mark[], place: number, axis: 0 | 1, by: number): Mark[] {
  return marks.map(([x, y], i): Mark => (i !== place ? [x, y] : axis === 0 ? [x + by, y] : [x, y + by]))
}
