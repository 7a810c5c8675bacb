import type { Mark } from './line'

/** The ends of an interval that holds the true value in the share of cases that is told. */
export type Within = readonly [least: number, most: number]

/** What slips do to a number: how much larger they make it on average, and one standard deviation. */
export interface Slipped {
  readonly more: number
  readonly sd: number
}

type Measure = (marks: readonly Mark[]) => number

const STEP = 1e-3 // share of a slip that is tried out: small enough to be straight, large enough for doubles
const APART = Math.sqrt(3) // standard deviations: where differences see a normal spread best
const AXES = [0, 1] as const

/**
 * One standard deviation of a number where every mark is off by its slip across and down, by the rule that the server
 * measures by (`planning/radiograph/spread.py`): first order, by differences.
 */
export function fromTapping(number: Measure, marks: readonly Mark[], slips: readonly Mark[]): number {
  const slopes = marks.flatMap((_, i) =>
    AXES.map((axis) => {
      const step = (slips[i]?.[axis] ?? 0) * STEP
      return (number(shifted(marks, i, axis, step)) - number(shifted(marks, i, axis, -step))) / (2 * STEP)
    }),
  )
  return Math.hypot(...slopes)
}

/** The same for slips as large as those of a finger on a whole photo: second order, by differences over the slip itself. */
export function bySlips(number: Measure, marks: readonly Mark[], slips: readonly Mark[]): Slipped {
  const at = number(marks)
  let [more, square] = [0, 0]
  for (const i of marks.keys())
    for (const axis of AXES) {
      const step = (slips[i]?.[axis] ?? 0) * APART
      const [up, down] = [number(shifted(marks, i, axis, step)), number(shifted(marks, i, axis, -step))]
      const bend = (up + down - 2 * at) / (2 * APART ** 2)
      more += bend
      // The second term is the spread of a parabola: for a normal slip its fourth moment, 3, less 1.
      square += ((up - down) / (2 * APART)) ** 2 + (APART ** 2 - 1) * bend ** 2
    }
  return { more, sd: Math.sqrt(square) }
}

/** The interval of a measure's size without its sign, for one that may lie on either side of 0. */
export function toEitherSide([least, most]: Within): Within {
  const ends = [Math.abs(least), Math.abs(most)]
  return [least < 0 && most > 0 ? 0 : Math.min(...ends), Math.max(...ends)]
}

function shifted(marks: readonly Mark[], place: number, axis: 0 | 1, by: number): Mark[] {
  return marks.map(([x, y], i): Mark => (i !== place ? [x, y] : axis === 0 ? [x + by, y] : [x, y + by]))
}
