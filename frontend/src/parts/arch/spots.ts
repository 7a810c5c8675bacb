/** A place in the drawing, and how far what stands there is turned [degrees]. */
export interface Spot {
  readonly x: number
  readonly y: number
  readonly turned_deg: number
}

export type Quadrant = 1 | 2 | 3 | 4

export const QUADRANTS: readonly Quadrant[] = [1, 2, 3, 4]

/** Places of a quadrant by ISO 3950: counted from the midline. */
export const PLACES = [1, 2, 3, 4, 5, 6, 7, 8] as const

/** The quadrant of a permanent tooth; none of a primary one or of what is no tooth. */
export function quadrantOf(iso: string | undefined): Quadrant | undefined {
  return iso !== undefined && /^[1-4][1-8]$/.test(iso) ? (Number(iso[0]) as Quadrant) : undefined
}

/** Seen from the front: the patient's right lies at the left of the picture, the upper jaw at its top. */
export const isLeft = (quadrant: Quadrant): boolean => quadrant === 1 || quadrant === 4
export const isUpper = (quadrant: Quadrant): boolean => quadrant < 3

interface Quarter {
  /** The centre of the ellipse that the teeth stand on; its radii. */
  readonly cx: number
  readonly cy: number
  readonly rx: number
  readonly ry: number
}

const STEPS = 400

/** Eight teeth at equal distances along a quarter of an ellipse, from the midline to the last molar. */
export function spotsAlong({ cx, cy, rx, ry }: Quarter, quadrant: Quadrant, from = 0): Spot[] {
  const [right, down] = [isLeft(quadrant) ? -1 : 1, isUpper(quadrant) ? -1 : 1]
  const at = (share: number) => {
    const angle = (share * Math.PI) / 2
    return { x: cx + right * rx * Math.sin(angle), y: cy + down * ry * Math.cos(angle), angle }
  }
  const along = [0]
  for (let i = 1; i <= STEPS; i += 1) {
    const [a, b] = [at((i - 1) / STEPS), at(i / STEPS)]
    along.push((along[i - 1] ?? 0) + Math.hypot(b.x - a.x, b.y - a.y))
  }
  const whole = along[STEPS] ?? 0
  return PLACES.map((place) => {
    const wanted = whole * (from + ((1 - from) * (place - 1)) / (PLACES.length - 1))
    const { x, y, angle } = at(
      Math.max(
        0,
        along.findIndex((way) => way >= wanted - 1e-9),
      ) / STEPS,
    )
    // The tangent of the ellipse there: a tooth stands across it.
    const turned = Math.atan2(-down * ry * Math.sin(angle), right * rx * Math.cos(angle))
    return { x, y, turned_deg: (turned * 180) / Math.PI + (right < 0 ? 180 : 0) }
  })
}

/** How a tooth is drawn seen from its chewing surface, as shares of its place: a convention, not a measure. */
export const CROWNS: readonly { across: number; deep: number; round: number }[] = [
  { across: 0.74, deep: 0.5, round: 0.2 },
  { across: 0.66, deep: 0.5, round: 0.22 },
  { across: 0.74, deep: 0.64, round: 0.34 },
  { across: 0.72, deep: 0.8, round: 0.34 },
  { across: 0.72, deep: 0.8, round: 0.34 },
  { across: 0.94, deep: 0.94, round: 0.26 },
  { across: 0.9, deep: 0.9, round: 0.26 },
  { across: 0.82, deep: 0.82, round: 0.3 },
]
