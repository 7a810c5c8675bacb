/** A mark in millimetres, or in widths of a pixel where there is no scale: across, down. */
export type Mark = readonly [number, number]

const MOST_SINE = 0.9 // half a turn's sine beyond which a piece is no arc but a slip of the finger
const DRAWN_STRAIGHT = 1e-6 // radians: no eye sees less

interface Piece {
  readonly from: Mark
  /** Direction of its chord and how far it turns, in radians. */
  readonly heading: number
  readonly turn: number
  readonly length: number
}

/**
 * A smooth line through marks, by the rule that the server measures by (`planning/radiograph/line.py`): between two
 * marks an arc that bends as the marks around it do; straight up to the mark `straightTo`.
 */
function pieces(marks: readonly Mark[], straightTo: number): Piece[] {
  const bows = bowsOf(marks, straightTo)
  return marks.slice(1).map((to, i) => {
    const from = marks[i] as Mark
    const chord = distance(from, to)
    const mean = i < straightTo ? 0 : ((bows[i] ?? 0) + (bows[i + 1] ?? 0)) / 2
    const half = Math.asin(Math.min(MOST_SINE, Math.max(-MOST_SINE, (mean * chord) / 2)))
    const heading = Math.atan2(to[1] - from[1], to[0] - from[0])
    return { from, heading, turn: 2 * half, length: chord / sinc(half) }
  })
}

/** Signed curvature at every mark: of the circle through it and its neighbours; the ends take their neighbour's. */
function bowsOf(marks: readonly Mark[], straightTo: number): number[] {
  const bows = marks.map(() => 0)
  for (let i = straightTo + 1; i < marks.length - 1; i++) bows[i] = bow(marks[i - 1], marks[i], marks[i + 1])
  if (marks.length - straightTo > 2) {
    bows[straightTo] = bows[straightTo + 1] ?? 0
    bows[marks.length - 1] = bows.at(-2) ?? 0
  }
  return bows
}

function bow(a: Mark | undefined, b: Mark | undefined, c: Mark | undefined): number {
  if (!a || !b || !c) return 0
  const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
  return (2 * cross) / (distance(a, b) * distance(b, c) * distance(a, c))
}

/** How far the way turns at a mark, to one side or the other. */
export function turnDeg(before: Mark, here: Mark, after: Mark): number {
  const [ax, ay, bx, by] = [here[0] - before[0], here[1] - before[1], after[0] - here[0], after[1] - here[1]]
  return (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI
}

export function lengthOf(marks: readonly Mark[], straightTo = 0): number {
  return pieces(marks, straightTo).reduce((sum, piece) => sum + piece.length, 0)
}

/** Where a distance from the first mark lies on the line; undefined before it begins and past its end. */
export function placeOf(marks: readonly Mark[], along: number, straightTo = 0): Mark | undefined {
  if (along < 0) return undefined
  let left = along
  for (const piece of pieces(marks, straightTo)) {
    if (left <= piece.length) return onPiece(piece, left / piece.length)
    left -= piece.length
  }
  return undefined
}

/** Each arc of the line as it is drawn: where it ends, its radius (above 0 it turns clockwise), none where straight. */
export function arcsOf(marks: readonly Mark[], straightTo = 0): { to: Mark; radius: number | undefined }[] {
  return pieces(marks, straightTo).map(({ from, turn }, i) => {
    const to = marks[i + 1] as Mark
    const bent = Math.abs(turn) > DRAWN_STRAIGHT
    return { to, radius: bent ? distance(from, to) / (2 * Math.sin(turn / 2)) : undefined }
  })
}

function onPiece({ from, heading, turn, length }: Piece, share: number): Mark {
  const chord = length * share * sinc((turn * share) / 2)
  const way = heading + (turn * (share - 1)) / 2
  return [from[0] + chord * Math.cos(way), from[1] + chord * Math.sin(way)]
}

/**
 * Schneider's angle in degrees, between the line nearest to the marks of the axis and the way from its last to `end`:
 * above 0 to the one side and below to the other.
 */
export function toSideDeg(axis: readonly Mark[], end: Mark): number {
  const leaves = axis.at(-1)
  if (!leaves) return 0
  const [ux, uy] = directionOf(axis)
  const [wx, wy] = [end[0] - leaves[0], end[1] - leaves[1]]
  return (Math.atan2(ux * wy - uy * wx, ux * wx + uy * wy) * 180) / Math.PI
}

/** Of the line nearest to the marks, by the squares of their distances, from the first towards the last. */
function directionOf(marks: readonly Mark[]): Mark {
  const mean = (axis: 0 | 1) => marks.reduce((sum, mark) => sum + mark[axis], 0) / marks.length
  const [x, y] = [mean(0), mean(1)]
  let [xx, xy, yy] = [0, 0, 0]
  for (const mark of marks) {
    xx += (mark[0] - x) ** 2
    xy += (mark[0] - x) * (mark[1] - y)
    yy += (mark[1] - y) ** 2
  }
  // The long axis of how the marks are spread: their first principal component.
  const way = Math.atan2(2 * xy, xx - yy) / 2
  const along: Mark = [Math.cos(way), Math.sin(way)]
  const [first, last] = [marks[0], marks.at(-1)]
  // That axis has no sense of its own: it is turned towards the last mark.
  const forwards = first && last ? along[0] * (last[0] - first[0]) + along[1] * (last[1] - first[1]) : 1
  return forwards >= 0 ? along : [-along[0], -along[1]]
}

function distance(a: Mark, b: Mark): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(x) / x
}
