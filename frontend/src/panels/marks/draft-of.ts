import type { MarkingShown } from '@/api/shapes'
import { type Draft, EMPTY, EMPTY_LINE, type LineDraft, lineOf, type MarkSpot } from './draft'

type Pixel = MarkingShown['marks']['lines'][number]['points'][number]

/** Marks that were kept, to go on from. */
export function draftOf({ marks: { lines, known } }: MarkingShown): Draft {
  const spot = ({ x_px, y_px, screen_px_per_px }: Pixel): MarkSpot => ({
    x: x_px,
    y: y_px,
    ...(screen_px_per_px && { zoom: screen_px_per_px }),
  })
  const drafts = lines.map((line): [string, LineDraft] => [
    line.canal,
    {
      ...EMPTY_LINE,
      points: line.points.map(spot),
      orifice: line.orifice,
      leaves: line.leaves,
      straightAgain: line.straight_again,
      tip: line.tip && spot(line.tip),
      setMm: line.set_mm === null ? '' : String(line.set_mm),
    },
  ])
  return {
    lines: Object.fromEntries(drafts),
    known: known
      ? { what: known.what, lengthMm: String(known.length_mm), points: known.points.map(spot) }
      : EMPTY.known,
  }
}

/** The very marks and scale that the canal's reading was taken from before. */
export function takenBefore(draft: Draft, canal: string, markings: readonly MarkingShown[]): boolean {
  const of = (each: Draft) => JSON.stringify([lineOf(each, canal), each.known])
  return markings.some((one) => one.readings.includes(canal) && of(draftOf(one)) === of(draft))
}
