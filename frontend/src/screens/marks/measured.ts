import { lengthOf, type Mark, placeOf, schneiderDeg } from '@/marks/line'
import { fromTapping, type Within } from '@/marks/sure'
import type { Spot } from '@/parts/image-board/view'
import { readMm } from '@/parts/millimetres'
import type { LineDraft } from './draft'
import { inColumns, slipOf, type Unit } from './unit'

/** What can be said of a line at once, before the server has measured it. */
export interface Said {
  readonly lengthMm: number | undefined
  readonly angleDeg: number | undefined
  readonly tipShortMm: number | undefined
  /** How much deeper the tip lies than the stop that was set says. */
  readonly tipDeeperMm: number | undefined
}

/** A number of marks in widths of a pixel; the tip is the last of them. */
type Measure = (marks: readonly Mark[]) => number

export function saidOf(line: LineDraft, unit: Unit): Said {
  const marks = lineMarks(line, unit)
  const { length, angle, short, deep } = measuresOf(line, marks)
  const { columnMm } = unit
  const mm = (of: Measure | undefined) => (columnMm && of ? of(marks) * columnMm : undefined)
  const set = readMm(line.setMm)
  const deepMm = mm(deep)
  return {
    lengthMm: mm(length),
    angleDeg: angle?.(marks),
    tipShortMm: mm(short),
    tipDeeperMm: deepMm !== undefined && set !== undefined ? deepMm - set : undefined,
  }
}

/** The intervals of what is said, by the server's rule (`planning/radiograph/measuring.py`). */
export function intervalsOf(line: LineDraft, unit: Unit): { readonly [of in keyof Said]?: Within | undefined } {
  const { figures, columnMm, share } = unit
  if (!figures) return {}
  const marks = lineMarks(line, unit)
  const slip = slipOf(figures, unit.rowPerColumn)
  const { length, angle, short, deep } = measuresOf(line, marks)
  const said = saidOf(line, unit)
  const within = (value: number | undefined, off: number): Within | undefined =>
    value === undefined ? undefined : [value - figures.reach * off, value + figures.reach * off]
  const ofMm = (of: Measure | undefined, value: number | undefined, more = 0) => {
    if (!of || !columnMm || share === undefined) return undefined
    // Marked on each other, two marks are off by one slip each, and differences would divide by nothing.
    const same = of === short && Math.abs(of(marks)) < Math.min(...slip)
    const tapped = same ? Math.SQRT2 * Math.max(...slip) : fromTapping(of, marks, slip)
    return within(value, Math.hypot(tapped * columnMm, of(marks) * columnMm * share, more))
  }
  return {
    lengthMm: ofMm(length, said.lengthMm),
    angleDeg: angle && within(said.angleDeg, fromTapping(angle, marks, slip)),
    tipShortMm: ofMm(short, said.tipShortMm),
    tipDeeperMm: ofMm(deep, said.tipDeeperMm, figures.instrument_spread_mm),
  }
}

/** In widths of a pixel, along the line: for ratios where there is no scale. */
export function columnsOf(line: LineDraft, unit: Unit): number | undefined {
  const marks = lineMarks(line, unit)
  return measuresOf(line, marks).length?.(marks)
}

/** Where a distance from the reference point lies on the image. */
export function spotAt(line: LineDraft, unit: Pick<Unit, 'columnMm' | 'rowPerColumn'>, mm: number): Spot | undefined {
  if (!unit.columnMm) return undefined
  const found = placeOf(inColumns(line.points, unit.rowPerColumn), mm / unit.columnMm, line.orifice ?? 0)
  return found && { x: found[0], y: found[1] / unit.rowPerColumn }
}

const lineMarks = ({ points, tip }: LineDraft, { rowPerColumn }: Unit): Mark[] =>
  inColumns(tip ? [...points, tip] : points, rowPerColumn)

interface Measures {
  readonly length?: Measure
  readonly angle?: Measure
  /** From the tip to the end; below 0 past it, by the way the canal's last part runs. */
  readonly short?: Measure
  /** From the reference point to the tip, along the canal. */
  readonly deep?: Measure
}

function measuresOf({ points, orifice, leaves, tip }: LineDraft, marks: readonly Mark[]): Measures {
  const last = points.length - 1
  const [before, end] = [marks[last - 1], marks[last]]
  if (last < 1 || !before || !end) return {}
  const [across, down] = [end[0] - before[0], end[1] - before[1]]
  const way: Mark = [across / Math.hypot(across, down), down / Math.hypot(across, down)]
  const from = orifice ?? 0
  const length: Measure = (moved) => lengthOf(moved.slice(0, last + 1), from)
  const gap = (moved: readonly Mark[]): Mark => {
    const [to, tipAt] = [moved[last] as Mark, moved[last + 1] as Mark]
    return [to[0] - tipAt[0], to[1] - tipAt[1]]
  }
  const ahead = ([x, y]: Mark) => x * way[0] + y * way[1]
  const bends = leaves !== null && leaves > from && leaves < last
  return {
    length,
    ...(bends && {
      angle: (moved: readonly Mark[]) => schneiderDeg(moved.slice(from, leaves + 1), moved[last] as Mark),
    }),
    ...(tip && {
      short: (moved: readonly Mark[]) => Math.sign(ahead(gap(moved))) * Math.hypot(...gap(moved)),
      deep: (moved: readonly Mark[]) => length(moved) - ahead(gap(moved)),
    }),
  }
}
