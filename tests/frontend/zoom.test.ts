import { describe, expect, test } from 'vitest'
import { kept, type Placing, type Point, WHOLE, zoomed } from '@/parts/viewer/zoom'

// What is checked is the definition: a point of the image at `p` is drawn at `scale · p + (x, y)` from the frame's middle.
const drawnAt = ({ scale, x, y }: Placing, p: Point): Point => ({ x: scale * p.x + x, y: scale * p.y + y })

describe('an image in its frame', () => {
  test('what lies under the fingers stays there while it grows and shrinks', () => {
    const at = { x: 70, y: -30 }
    let placing: Placing = { scale: 2, x: 10, y: 5 }
    const under = { x: (at.x - placing.x) / placing.scale, y: (at.y - placing.y) / placing.scale }
    for (const factor of [1.5, 1.5, 0.7, 1.1]) {
      placing = zoomed(placing, factor, at)
      expect(drawnAt(placing, under).x).toBeCloseTo(at.x, 9)
      expect(drawnAt(placing, under).y).toBeCloseTo(at.y, 9)
    }
    expect(placing.scale).toBeCloseTo(2 * 1.5 * 1.5 * 0.7 * 1.1, 9)
  })

  test('it is never smaller than the whole, and then lies in the middle', () => {
    const frame = { width: 360, height: 500 }
    expect(kept(zoomed({ scale: 1.2, x: 30, y: 30 }, 0.1, { x: 100, y: 0 }), frame)).toEqual(WHOLE)
  })

  test('it is never moved out of the frame', () => {
    // Twice as large, half of its growth lies on each side: 360 · (2 - 1) / 2 = 180, 500 · (2 - 1) / 2 = 250.
    expect(kept({ scale: 2, x: 9999, y: -9999 }, { width: 360, height: 500 })).toEqual({ scale: 2, x: 180, y: -250 })
  })
})
