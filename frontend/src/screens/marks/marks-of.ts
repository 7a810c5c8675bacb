import type { ImageMarks } from '@/api/shapes'
import { type Draft, type LineDraft, lineOf, type MarkSpot } from '@/panels/marks/draft'
import { readMm } from '@/units/millimetres'

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
