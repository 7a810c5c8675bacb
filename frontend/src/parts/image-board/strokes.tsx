import { inSight, onImage, type Size, type Spot, type View } from './view'

/** Where a finger went over a picture, in its pixels. */
interface Stroke {
  readonly points: readonly Spot[]
  readonly width: number
}

/** Black that is drawn over the image; what comes together is taken back together. */
export interface Strokes {
  readonly drawn: readonly Stroke[]
  readonly onDraw: (together: readonly Stroke[]) => void
}

const FINGER_PX = 44 // of the screen: as wide as what draws
const LEAST_PX = 0.5 // of the image: less out of sight is none

export const strokeOf = (points: readonly Spot[], view: View): Stroke => ({ points, width: FINGER_PX / view.zoom })

/** What the keys draw: as large as a finger, in the middle of the pane. */
export const inTheMiddle = (view: View, pane: Size): Stroke =>
  strokeOf([onImage(view, { x: pane.width / 2, y: pane.height / 2 })], view)

/** All that does not lie in the pane, a stroke for each side of it. */
export function outOfSight(view: View, image: Size, pane: Size): Stroke[] {
  const { from, to } = inSight(view, image, pane)
  const { width, height } = image
  const across = (top: number, bottom: number) => band([0, width], [top, bottom])
  const down = (left: number, right: number) => turned(band([0, height], [left, right]))
  return [across(0, from.y), across(to.y, height), down(0, from.x), down(to.x, width)].filter(
    ({ width }) => width > LEAST_PX,
  )
}

function band([first, last]: [number, number], [near, far]: [number, number]): Stroke {
  const y = (near + far) / 2
  return { points: [first, last].map((x) => ({ x, y })), width: far - near }
}

const turned = ({ points, width }: Stroke): Stroke => ({ points: points.map(({ x, y }) => ({ x: y, y: x })), width })

/** Strokes as they lie on the image. */
export function Drawn({ strokes, view }: { strokes: readonly Stroke[]; view: View }) {
  return (
    <g class="strokes" transform={`translate(${view.x} ${view.y}) scale(${view.zoom})`}>
      {strokes.map((stroke, index) => (
        <polyline key={index} data-drawn="stroke" points={ends(stroke)} stroke-width={stroke.width} />
      ))}
    </g>
  )
}

/** A touch without a way is drawn too. */
function ends({ points }: Stroke): string {
  const last = points[points.length - 1] as Spot
  return [...points, { x: last.x + 0.01, y: last.y }].map(({ x, y }) => `${x},${y}`).join(' ')
}
