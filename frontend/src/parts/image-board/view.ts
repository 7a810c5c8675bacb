/** Across and down, in pixels of the image or of the screen. */
export interface Spot {
  readonly x: number
  readonly y: number
}

export interface Size {
  readonly width: number
  readonly height: number
}

/** How the image lies in its pane: a spot of the image times `zoom`, moved by x and y. */
export interface View extends Spot {
  readonly zoom: number
}

const FARTHEST_IN = 8 // screen pixels to one of the image: a pixel is a square one can see
const KEPT = 0.25 // share of the pane that the image never leaves

/** The whole image in the middle of its pane. */
export function fitted(image: Size, pane: Size): View {
  const zoom = Math.min(pane.width / image.width, pane.height / image.height)
  return { zoom, x: (pane.width - image.width * zoom) / 2, y: (pane.height - image.height * zoom) / 2 }
}

export const onScreen = (view: View, { x, y }: Spot): Spot => ({ x: x * view.zoom + view.x, y: y * view.zoom + view.y })

export const onImage = (view: View, { x, y }: Spot): Spot => ({
  x: (x - view.x) / view.zoom,
  y: (y - view.y) / view.zoom,
})

/** Nearer or farther, the spot of the screen `at` staying where it is. */
export function zoomed(view: View, factor: number, at: Spot, image: Size, pane: Size): View {
  const least = fitted(image, pane).zoom
  const zoom = Math.min(FARTHEST_IN, Math.max(least, view.zoom * factor))
  const kept = onImage(view, at)
  return within({ zoom, x: at.x - kept.x * zoom, y: at.y - kept.y * zoom }, image, pane)
}

export function moved(view: View, by: Spot, image: Size, pane: Size): View {
  return within({ ...view, x: view.x + by.x, y: view.y + by.y }, image, pane)
}

/** What of the image lies in the pane, in its pixels. */
export function inSight(view: View, image: Size, pane: Size): { from: Spot; to: Spot } {
  const to = onImage(view, { x: pane.width, y: pane.height })
  return { from: inside(onImage(view, { x: 0, y: 0 }), image), to: inside(to, image) }
}

/** A spot of the image in the middle of the pane. */
export function nearTo(at: Spot, zoom: number, image: Size, pane: Size): View {
  const next = Math.min(FARTHEST_IN, Math.max(fitted(image, pane).zoom, zoom))
  return within({ zoom: next, x: pane.width / 2 - at.x * next, y: pane.height / 2 - at.y * next }, image, pane)
}

/** What a magnifier shows: three times nearer, as far as four times the view and four pixels of the screen to one go. */
export function magnified(zoom: number): number {
  return Math.max(zoom, Math.min(4 * zoom, 4, Math.max(1, 3 * zoom)))
}

/** Never out of sight. */
function within(view: View, image: Size, pane: Size): View {
  const hold = (at: number, long: number, room: number) =>
    Math.min(room * (1 - KEPT), Math.max(room * KEPT - long * view.zoom, at))
  return {
    zoom: view.zoom,
    x: hold(view.x, image.width, pane.width),
    y: hold(view.y, image.height, pane.height),
  }
}

export function inside({ x, y }: Spot, image: Size): Spot {
  return { x: Math.min(image.width, Math.max(0, x)), y: Math.min(image.height, Math.max(0, y)) }
}

export const outside = ({ x, y }: Spot, image: Size): boolean => x < 0 || y < 0 || x > image.width || y > image.height

export const apart = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y)

/** A view without its image's and its pane's sizes: two images that share it show the same part of the tooth. */
export interface Link {
  /** Times the whole image. */
  readonly times: number
  /** Share of the image, across and down, that lies in the middle of the pane. */
  readonly middle: Spot
}

export const WHOLE: Link = { times: 1, middle: { x: 0.5, y: 0.5 } }

export function linked({ times, middle }: Link, image: Size, pane: Size): View {
  const zoom = fitted(image, pane).zoom * times
  return {
    zoom,
    x: pane.width / 2 - middle.x * image.width * zoom,
    y: pane.height / 2 - middle.y * image.height * zoom,
  }
}

export function linkOf(view: View, image: Size, pane: Size): Link {
  const { x, y } = onImage(view, { x: pane.width / 2, y: pane.height / 2 })
  return { times: view.zoom / fitted(image, pane).zoom, middle: { x: x / image.width, y: y / image.height } }
}

/** Heights of labels that stand below each other without touching: as near to their own as those under them allow. */
export function standingApart(heights: readonly number[], gap: number): number[] {
  const shown = [...heights]
  let under = Number.POSITIVE_INFINITY
  const fromBelow = heights.map((y, i) => ({ y, i })).sort((a, b) => b.y - a.y || b.i - a.i)
  for (const { y, i } of fromBelow) {
    under = Math.min(y, under - gap)
    shown[i] = under
  }
  return shown
}
