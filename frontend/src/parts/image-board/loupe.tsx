import { drawnPath, type Marked } from './marked-line'
import { magnified, onScreen, type Size, type Spot, type View } from './view'

interface Props {
  readonly src: string
  readonly image: Size
  /** Where the finger is; left out while none is on the image. */
  readonly at: Spot | undefined
  readonly zoom: number
  readonly filter: string
  readonly view: View
  readonly room: Size
  /** The line that is worked on. */
  readonly line: Marked | undefined
}

const ACROSS_PX = 120

/** What lies under the finger with its line, enlarged, in the upper corner that the finger is not in. */
export function Loupe({ src, image, at: under, zoom, filter, view, room, line }: Props) {
  // At rest it is a dot: a large image would take its first touch too long to be decoded at this size.
  const at = under ?? { x: image.width / 2, y: image.height / 2 }
  const near = magnified(zoom)
  const left = onScreen(view, at).x > room.width / 2
  const half = ACROSS_PX / 2
  const lies: View = { zoom: near, x: half - at.x * near, y: half - at.y * near }
  return (
    <div
      class="loupe in-the-dark"
      data-drawn="magnifier"
      data-side={left ? 'left' : 'right'}
      data-rests={!under || undefined}
      aria-hidden="true"
    >
      <img
        data-drawn="magnified"
        src={src}
        alt=""
        width={image.width}
        height={image.height}
        style={{ transform: `translate(${lies.x}px, ${lies.y}px) scale(${near})`, filter }}
        draggable={false}
      />
      <svg viewBox={`0 0 ${ACROSS_PX} ${ACROSS_PX}`} aria-hidden="true">
        {under && line && (
          // The line alone: what stands along it is drawn anew with every move, which a slow phone feels.
          <g class="marked-line" data-drawn="line" data-active>
            <path class="over" d={drawnPath(line, lies)} />
          </g>
        )}
        <path class="aim" d="M60 20v34M60 66v34M20 60h34M66 60h34" />
      </svg>
    </div>
  )
}
