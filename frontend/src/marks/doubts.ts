import type { DoubtKind } from '@/api/shapes'
import { type Mark, turnDeg } from './line'

/** A mark that whoever set it is asked about: the line runs back from it, or turns at it as sharply as no canal does. */
export interface Doubt {
  readonly point: number
  readonly kind: DoubtKind
}

const QUARTER_DEG = 90 // a line that turns by more runs back

/** The same on the server: `planning/radiograph/doubts.py`. */
export function doubtsOf(marks: readonly Mark[], most_deg: number): Doubt[] {
  return marks.flatMap((here, point): Doubt[] => {
    const [before, after] = [marks[point - 1], marks[point + 1]]
    const turn = before && after ? Math.abs(turnDeg(before, here, after)) : 0
    return turn > most_deg ? [{ point, kind: turn > QUARTER_DEG ? 'turns_back' : 'sharp' }] : []
  })
}
