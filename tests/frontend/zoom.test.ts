import { describe, expect, test } from 'vitest'
import {
  fitted,
  linked,
  linkOf,
  magnified,
  moved,
  nearTo,
  onImage,
  onScreen,
  type Size,
  type View,
  WHOLE,
  zoomed,
} from '@/parts/image-board/view'

// What is checked is the definition: a spot of the image at `p` is drawn at `zoom · p + (x, y)` of its pane.

const IMAGE: Size = { width: 720, height: 1000 }
const PANE: Size = { width: 360, height: 400 }

describe('an image in its pane', () => {
  test('is first seen whole, in the middle', () => {
    // By hand: the height decides, 400/1000; 360 - 720 · 0.4 leaves 72, half on each side.
    expect(fitted(IMAGE, PANE)).toEqual({ zoom: 0.4, x: 36, y: 0 })
  })

  test('what lies under the fingers stays there while it grows and shrinks', () => {
    const at = { x: 250, y: 170 }
    let view: View = fitted(IMAGE, PANE)
    const under = onImage(view, at)
    for (const factor of [1.5, 1.5, 0.7, 1.1]) {
      view = zoomed(view, factor, at, IMAGE, PANE)
      expect(onScreen(view, under).x).toBeCloseTo(at.x, 9)
      expect(onScreen(view, under).y).toBeCloseTo(at.y, 9)
    }
    expect(view.zoom).toBeCloseTo(0.4 * 1.5 * 1.5 * 0.7 * 1.1, 9)
  })

  test('is never smaller than the whole, and a pixel never larger than eight of the screen', () => {
    const middle = { x: 180, y: 200 }
    expect(zoomed(fitted(IMAGE, PANE), 0.1, middle, IMAGE, PANE).zoom).toBe(0.4)
    expect(zoomed(fitted(IMAGE, PANE), 1000, middle, IMAGE, PANE).zoom).toBe(8)
  })

  test('is never moved out of sight: a quarter of the pane is kept', () => {
    const view = fitted(IMAGE, PANE)
    // By hand: from the left it may begin at 360 · 3/4, from the right it may end at 360 / 4.
    expect(moved(view, { x: 9999, y: 0 }, IMAGE, PANE).x).toBe(270)
    expect(moved(view, { x: -9999, y: 0 }, IMAGE, PANE).x).toBe(90 - 720 * 0.4)
  })

  test('a magnifier goes four times the view at most, and four pixels of the screen to one', () => {
    // By hand: four times 0.09; three times 0.5; 4 and no more; what is seen nearer than that is not shown smaller.
    expect([0.09, 0.5, 2, 8].map(magnified)).toEqual([0.36, 1.5, 4, 8])
  })

  test('a spot that is asked for comes into the middle', () => {
    const spot = { x: 300, y: 700 }
    expect(onScreen(nearTo(spot, 2, IMAGE, PANE), spot)).toEqual({ x: 180, y: 200 })
    expect(nearTo(spot, 0.1, IMAGE, PANE).zoom).toBe(0.4)
  })

  test('two images that share a link show the same part, whatever their sizes', () => {
    const other: Size = { width: 300, height: 300 }
    expect(linked(WHOLE, IMAGE, PANE)).toEqual(fitted(IMAGE, PANE))
    const link = linkOf(zoomed(fitted(IMAGE, PANE), 3, { x: 100, y: 90 }, IMAGE, PANE), IMAGE, PANE)
    const [first, second] = [linked(link, IMAGE, PANE), linked(link, other, PANE)]
    const middle = { x: 180, y: 200 }
    expect(onImage(second, middle).x / 300).toBeCloseTo(onImage(first, middle).x / 720, 9)
    expect(onImage(second, middle).y / 300).toBeCloseTo(onImage(first, middle).y / 1000, 9)
  })
})
