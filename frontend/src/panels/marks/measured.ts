import { lengthOf, type Mark, placeOf, toSideDeg } from '@/marks/line'
import { bySlips, fromTapping, type Slipped, toEitherSide, type Within } from '@/marks/sure'
import type { Spot } from '@/parts/image-board/view'
import { readMm } from '@/units/millimetres'
import type { LineDraft } from './draft'
import { inColumns, slipsOf, type Unit } from './unit'

/** What can be said of a line at once, before the server has measured it. */
interface MeasuredText {
  readonly lengthMm: number | undefined
  readonly angleDeg: number | undefined
  readonly tipShortMm: number | undefined
  /** How much deeper the tip lies than the stop that was set says. */
  readonly tipDeeperMm: number | undefined
}

/** A number of marks in widths of a pixel; the tip is the last of them. */
type Measure = (marks: readonly Mark[]) => number

export function saidOf(line: LineDraft, unit: Unit): MeasuredText {
  const marks = lineMarks(line, unit)
  const { length, angle, short, deep } = measuresOf(line, marks)
  const { columnMm } = unit
  const mm = (of: Measure | undefined) => (columnMm && of ? of(marks) * columnMm : undefined)
  const set = readMm(line.setMm)
  const deepMm = mm(deep)
  return {
    lengthMm: mm(length),
    angleDeg: angle && Math.abs(angle(marks)),
    tipShortMm: mm(short),
    tipDeeperMm: deepMm !== undefined && set !== undefined ? deepMm - set : undefined,
  }
}

/** The intervals of what is said, by the server's rule (`planning/radiograph/measuring.py`). */
export function intervalsOf(line: LineDraft, unit: Unit): { readonly [of in keyof MeasuredText]?: Within | undefined } {
  const { figures, columnMm, share } = unit
  if (!figures) return {}
  const marks = lineMarks(line, unit)
  const slips = slipsOf(allSpots(line), figures, unit.rowPerColumn)
  const { length, angle, short, deep } = measuresOf(line, marks)
  const said = saidOf(line, unit)
  const within = (value: number, { more, sd }: Slipped): Within => [
    value - more - figures.reach * sd,
    value - more + figures.reach * sd,
  ]
  const ofMm = (of: Measure | undefined, value: number | undefined, more = 0) => {
    if (!of || value === undefined || !columnMm || share === undefined) return undefined
    const off = of === short ? { more: 0, sd: offOfTip(of, marks, slips) } : bySlips(of, marks, slips)
    return within(value, {
      more: off.more * columnMm,
      sd: Math.hypot(off.sd * columnMm, of(marks) * columnMm * share, more),
    })
  }
  return {
    lengthMm: ofMm(length, said.lengthMm),
    angleDeg: angle && toEitherSide(within(angle(marks), bySlips(angle, marks, slips))),
    tipShortMm: ofMm(short, said.tipShortMm),
    tipDeeperMm: ofMm(deep, said.tipDeeperMm, figures.instrument_spread_mm),
  }
}

/** Marked on each other, tip and end are off by both slips, and differences would divide by nothing. */
function offOfTip(short: Measure, marks: readonly Mark[], slips: readonly Mark[]): number {
  const both = slips.slice(-2)
  const same = Math.abs(short(marks)) < Math.min(...both.flat())
  return same ? Math.hypot(...both.map((slip) => Math.max(...slip))) : fromTapping(short, marks, slips)
}

/** In widths of a pixel, along the line: for ratios where there is no scale. */
export function columnsOf(line: LineDraft, unit: Unit): number | undefined {
  const marks = lineMarks(line, unit)
  return measuresOf(line, marks).length?.(marks)
}

/** Where a distance from the reference point lies on the image. */
export function spotAt(line: LineDraft, unit: Pick<Unit, 'columnMm' | 'rowPerColumn'>, mm: number): Spot | undefined {
  if (!unit.columnMm) return undefined
  const place = placeOf(inColumns(line.points, unit.rowPerColumn), mm / unit.columnMm, line.orifice ?? 0)
  return place && { x: place[0], y: place[1] / unit.rowPerColumn }
}

const allSpots = ({ points, tip }: LineDraft) => (tip ? [...points, tip] : points)

const lineMarks = (line: LineDraft, { rowPerColumn }: Unit): Mark[] => inColumns(allSpots(line), rowPerColumn)

interface Measures {
  readonly length?: Measure
  /** To one side or the other. */
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
      angle: (moved: readonly Mark[]) => toSideDeg(moved.slice(from, leaves + 1), moved[last] as Mark),
    }),
    ...(tip && {
      short: (moved: readonly Mark[]) => Math.sign(ahead(gap(moved))) * Math.hypot(...gap(moved)),
      deep: (moved: readonly Mark[]) => length(moved) - ahead(gap(moved)),
    }),
  }
}
