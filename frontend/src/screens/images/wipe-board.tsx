import { useRef, useState } from 'preact/hooks'
import { fitted, onImage, type Size, type Spot } from '@/parts/image-board/view'
import { useRoom } from '@/parts/room'
import type { Wipe } from '@/store/look-first'
import { words } from '@/words/en'

const FINGER_PX = 44 // of the screen: as wide as what wipes

interface Props {
  src: string
  image: Size
  wipes: readonly Wipe[]
  onWipe: (wipe: Wipe) => void
}

/** The whole picture; a finger that goes over it leaves black. */
export function WipeBoard({ src, image, wipes, onWipe }: Props) {
  const { room, ref } = useRoom()
  const view = fitted(image, room)
  const under = useRef<number | undefined>(undefined)
  const [points, setPoints] = useState<readonly Spot[]>([])
  const width = FINGER_PX / view.zoom
  const at = (event: PointerEvent): Spot => {
    const pane = (event.currentTarget as Element).getBoundingClientRect()
    return onImage(view, { x: event.clientX - pane.left, y: event.clientY - pane.top })
  }
  const begin = (event: PointerEvent) => {
    if (under.current !== undefined) return // a second finger
    under.current = event.pointerId
    ;(event.currentTarget as Element).setPointerCapture(event.pointerId)
    setPoints([at(event)])
  }
  const go = (event: PointerEvent) => {
    if (event.pointerId === under.current) setPoints((before) => [...before, at(event)])
  }
  const end = (event: PointerEvent) => {
    if (event.pointerId !== under.current) return
    under.current = undefined
    if (points.length > 0) onWipe({ points, width })
    setPoints([])
  }
  const drawn = points.length > 0 ? [...wipes, { points, width }] : wipes
  return (
    <div
      ref={ref}
      class="wipe-board"
      role="img"
      aria-label={words.images.lookFirst.wipe}
      onPointerDown={begin}
      onPointerMove={go}
      onPointerUp={end}
      onPointerCancel={end}
    >
      <svg viewBox={`0 0 ${image.width} ${image.height}`} aria-hidden="true">
        <image href={src} width={image.width} height={image.height} />
        {drawn.map((wipe, index) => (
          <polyline key={index} points={ends(wipe)} stroke-width={wipe.width} />
        ))}
      </svg>
    </div>
  )
}

/** A touch without a way is drawn too. */
function ends({ points }: Wipe): string {
  const last = points[points.length - 1] as Spot
  return [...points, { x: last.x + 0.01, y: last.y }].map(({ x, y }) => `${x},${y}`).join(' ')
}
