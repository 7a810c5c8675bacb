import { useRef, useState } from 'preact/hooks'
import { apart, inside, moved, onImage, onScreen, type Size, type Spot, type View, zoomed } from './view'

const REACH_PX = 30 // a finger that moves takes the nearest mark within this along
const ON_PX = 14 // a touch this near picks the mark; farther off it sets another one
const STILL_PX = 4 // a finger that moved less than this did not mean to

interface Given {
  readonly image: Size
  readonly pane: Size
  readonly view: View
  readonly setView: (view: View) => void
  /** Left out where the image is only looked at: one finger shifts it then. */
  readonly edit: Edit | undefined
}

/** Marks that a finger can take hold of and set. */
export interface Edit {
  readonly marks: readonly Spot[]
  readonly picked: number | undefined
  readonly onPick: (number: number) => void
  readonly onMove: (number: number, to: Spot) => void
  readonly onMoved: () => void
  readonly onPlace: (at: Spot) => void
}

type Doing =
  | { kind: 'shift'; at: Spot }
  | { kind: 'place'; at: Spot }
  // A finger that takes hold beside the mark keeps its distance: the mark does not jump.
  | { kind: 'hold'; number: number; from: Spot; beside: Spot; moving: boolean }
  | { kind: 'pinch'; middle: Spot; apart: number }

/**
 * Where marks are edited one finger sets a mark where it lets go, or moves the mark that it took hold of; two fingers zoom and shift the image.
 * `under` is the spot of the image that the magnifier shows.
 */
export function useGestures(given: Given) {
  const fingers = useRef(new Map<number, Spot>())
  const doing = useRef<Doing | undefined>(undefined)
  const [under, setUnder] = useState<Spot>()
  const { image, pane, view, edit } = given

  const down = (event: PointerEvent) => {
    if (event.button !== 0) return
    ;(event.currentTarget as Element).setPointerCapture(event.pointerId)
    fingers.current.set(event.pointerId, spotOf(event))
    if (fingers.current.size === 2) {
      const [a, b] = [...fingers.current.values()] as [Spot, Spot]
      doing.current = { kind: 'pinch', middle: middle(a, b), apart: apart(a, b) }
      setUnder(undefined)
    } else if (fingers.current.size === 1) begin(spotOf(event))
  }

  const begin = (at: Spot) => {
    if (!edit) {
      doing.current = { kind: 'shift', at }
      return
    }
    const places = edit.marks.map((mark) => onScreen(view, mark))
    const number = nearest(places, at)
    const place = number === undefined ? undefined : places[number]
    if (number === undefined || !place) {
      doing.current = { kind: 'place', at }
      setUnder(inside(onImage(view, at), image))
      return
    }
    const beside = { x: place.x - at.x, y: place.y - at.y }
    doing.current = { kind: 'hold', number, from: at, beside, moving: false }
    setUnder(edit.marks[number])
  }

  const move = (event: PointerEvent) => {
    if (!fingers.current.has(event.pointerId)) return
    fingers.current.set(event.pointerId, spotOf(event))
    const now = doing.current
    if (now?.kind === 'pinch') pinch(now)
    else if (now?.kind === 'shift') {
      const at = spotOf(event)
      given.setView(moved(view, { x: at.x - now.at.x, y: at.y - now.at.y }, image, pane))
      now.at = at
    } else if (now?.kind === 'place') {
      now.at = spotOf(event)
      setUnder(inside(onImage(view, now.at), image))
    } else if (now?.kind === 'hold') {
      const { x, y } = spotOf(event)
      if (!now.moving && apart(now.from, { x, y }) < STILL_PX) return
      if (!now.moving) edit?.onPick(now.number)
      now.moving = true
      const to = inside(onImage(view, { x: x + now.beside.x, y: y + now.beside.y }), image)
      edit?.onMove(now.number, to)
      setUnder(to)
    }
  }

  const pinch = (before: Extract<Doing, { kind: 'pinch' }>) => {
    const [a, b] = [...fingers.current.values()]
    if (!a || !b) return
    const now = { kind: 'pinch' as const, middle: middle(a, b), apart: apart(a, b) }
    const by = { x: now.middle.x - before.middle.x, y: now.middle.y - before.middle.y }
    given.setView(zoomed(moved(view, by, image, pane), now.apart / (before.apart || 1), now.middle, image, pane))
    doing.current = now
  }

  const up = (event: PointerEvent) => {
    if (!fingers.current.delete(event.pointerId)) return
    const now = doing.current
    // Of two fingers the one that stays does nothing until it is lifted as well.
    if (now?.kind === 'place') edit?.onPlace(inside(onImage(view, now.at), image))
    if (now?.kind === 'hold') letGo(now)
    doing.current = undefined
    setUnder(undefined)
  }

  const letGo = ({ moving, number, from, beside }: Extract<Doing, { kind: 'hold' }>) => {
    if (moving) edit?.onMoved()
    else if (Math.hypot(beside.x, beside.y) <= ON_PX) edit?.onPick(number)
    else edit?.onPlace(inside(onImage(view, from), image))
  }

  const cancel = (event: PointerEvent) => {
    fingers.current.delete(event.pointerId)
    doing.current = undefined
    setUnder(undefined)
  }

  const wheel = (event: WheelEvent) => {
    event.preventDefault()
    given.setView(zoomed(view, event.deltaY < 0 ? 1.25 : 0.8, spotOf(event), image, pane))
  }

  return {
    under,
    on: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel, onWheel: wheel },
  }
}

function spotOf(event: PointerEvent | WheelEvent): Spot {
  const { left, top } = (event.currentTarget as Element).getBoundingClientRect()
  return { x: event.clientX - left, y: event.clientY - top }
}

const middle = (a: Spot, b: Spot): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

function nearest(places: readonly Spot[], at: Spot): number | undefined {
  let found: number | undefined
  let least = REACH_PX
  places.forEach((place, number) => {
    const far = apart(place, at)
    if (far <= least) [found, least] = [number, far]
  })
  return found
}
