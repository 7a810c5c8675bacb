import { onScreen, type Size, type Spot, type View } from './view'

interface Props {
  readonly src: string
  readonly image: Size
  /** Where the finger is; left out while none is on the image. */
  readonly at: Spot | undefined
  readonly zoom: number
  readonly filter: string
  readonly view: View
  readonly room: Size
}

const ACROSS_PX = 120
const NEARER = 3 // than the image beside it

/** What lies under the finger, enlarged, in the upper corner that the finger is not in. */
export function Loupe({ src, image, at: under, zoom, filter, view, room }: Props) {
  // At rest it is a dot: a large image would take its first touch too long to be decoded at this size.
  const at = under ?? { x: image.width / 2, y: image.height / 2 }
  const near = Math.max(1, zoom * NEARER)
  const left = onScreen(view, at).x > room.width / 2
  const half = ACROSS_PX / 2
  return (
    <div class="loupe" data-side={left ? 'left' : 'right'} data-rests={!under || undefined} aria-hidden="true">
      <img
        src={src}
        alt=""
        width={image.width}
        height={image.height}
        style={{ transform: `translate(${half - at.x * near}px, ${half - at.y * near}px) scale(${near})`, filter }}
        draggable={false}
      />
      <svg viewBox="0 0 120 120" aria-hidden="true">
        <path d="M60 20v34M60 66v34M20 60h34M66 60h34" />
      </svg>
    </div>
  )
}
