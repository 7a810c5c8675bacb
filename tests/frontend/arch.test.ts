import { expect, test } from 'vitest'
import { QUADRANTS, quadrantOf, spotsAlong } from '@/parts/arch/spots'

// As the half arch is drawn on a screen 320 px wide.
const DRAWN = { cx: 144, cy: 114, rx: 234, ry: 174 }
const TARGET_PX = 44 // WCAG 2.2, 2.5.5: target size (enhanced)

test.each(QUADRANTS)(
  'eight teeth of quadrant %i stand at equal distances, each as far as a thumb needs',
  (quadrant) => {
    const spots = spotsAlong(DRAWN, quadrant)
    const apart = spots.slice(1).map(({ x, y }, i) => Math.hypot(x - (spots[i]?.x ?? 0), y - (spots[i]?.y ?? 0)))
    expect(spots).toHaveLength(8)
    expect(Math.min(...apart)).toBeGreaterThanOrEqual(TARGET_PX)
    expect(Math.max(...apart) - Math.min(...apart)).toBeLessThan(2)
  },
)

test('the patient’s right lies at the left of the picture, the upper jaw at its top (ISO 3950)', () => {
  const side = (quadrant: (typeof QUADRANTS)[number]) => {
    const molar = spotsAlong(DRAWN, quadrant)[5] ?? { x: Number.NaN, y: Number.NaN }
    return [Math.sign(molar.x - DRAWN.cx), Math.sign(molar.y - DRAWN.cy)]
  }
  expect(QUADRANTS.map(side)).toEqual([
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ])
})

test('a primary tooth, and what is no tooth, lies in none of its quadrants', () => {
  expect(['11', '48', '55', '19', 'UL6', '', undefined].map(quadrantOf)).toEqual([1, 4, ...Array(5).fill(undefined)])
})
