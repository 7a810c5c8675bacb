/** How an image lies in its frame: `scale` times its fitted size, its middle moved by `x`, `y` pixels of the screen. */
export interface Placing {
  readonly scale: number
  readonly x: number
  readonly y: number
}

export interface Point {
  readonly x: number
  readonly y: number
}

export const WHOLE: Placing = { scale: 1, x: 0, y: 0 }
const MOST = 12 // beyond, a pixel of a radiograph is a tile

/** Larger or smaller by a factor; what lies at `at` (from the frame's middle) stays there. */
export function zoomed(from: Placing, factor: number, at: Point): Placing {
  const scale = Math.min(MOST, Math.max(1, from.scale * factor))
  const by = scale / from.scale
  return { scale, x: at.x - (at.x - from.x) * by, y: at.y - (at.y - from.y) * by }
}

/** Moved, but never so far that the image leaves the frame's middle. */
export function kept(placing: Placing, frame: { width: number; height: number }): Placing {
  const most = { x: (frame.width * (placing.scale - 1)) / 2, y: (frame.height * (placing.scale - 1)) / 2 }
  const within = (value: number, limit: number) => Math.min(limit, Math.max(-limit, value))
  return { scale: placing.scale, x: within(placing.x, most.x), y: within(placing.y, most.y) }
}

export const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })
export const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
