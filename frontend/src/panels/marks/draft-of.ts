import type { ImageMarks, MarkingShown } from '@/api/shapes'
import { readMm } from '@/units/millimetres'
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
  return markings.some((marking) => marking.readings.includes(canal) && of(draftOf(marking)) === of(draft))
}

/** The marks as the server takes them. */
export function marksOf(draft: Draft, canals: readonly { name: string; reference_point: string }[]): ImageMarks {
  const length = readMm(draft.known.lengthMm)
  const lines = canals
    .map(({ name, reference_point }) => ({ name, reference_point, line: lineOf(draft, name) }))
    .filter(({ line }) => line.points.length >= 2)
    .map(({ name, reference_point, line }) => ({
      canal: name,
      points: line.points.map(pixel),
      orifice: line.orifice,
      // Where it bends with nothing marked after it: not marked yet.
      leaves: bends(line) ? line.leaves : null,
      straight_again: bends(line) ? line.straightAgain : null,
      tip: line.tip && pixel(line.tip),
      set_mm: readMm(line.setMm) ?? null,
      reference_point,
    }))
  const { what, points } = draft.known
  const known = points.length >= 2 && length ? { what, length_mm: length, points: points.map(pixel) } : null
  return { lines, known }
}

const bends = ({ leaves, points }: LineDraft) => leaves !== null && leaves < points.length - 1

const pixel = ({ x, y, zoom }: MarkSpot) => ({ x_px: x, y_px: y, screen_px_per_px: zoom ?? null })
