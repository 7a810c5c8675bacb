import { useEffect, useRef, useState } from 'preact/hooks'
import { apart, inside, moved, onImage, onScreen, outside, type Size, type Spot, type View, zoomed } from './view'

const PICKED_PX = 30 // a finger takes hold of the mark that is picked within this
const OTHER_PX = 18 // of any other one only within this: beside it a finger moves the image
const STILL_PX = 6 // a finger that moved less than this did not mean to
const HOLD_MS = 350 // a finger that rests so long takes hold, or sets a mark under the magnifier
const AGAIN_MS = 250 // a second touch within this and this near is the same one: wet gloves touch twice
const AGAIN_PX = 8

interface Given {
  readonly image: Size
  readonly pane: Size
  readonly view: View
  readonly setView: (view: View) => void
  /** Left out where the image is only looked at. */
  readonly edit: Edit | undefined
  /** What a finger that goes over the image draws; left out where it does not. */
  readonly onStroke?: ((points: readonly Spot[]) => void) | undefined
}

/** Where a finger was on the image, and how many pixels of the screen one of the image was wide then. */
export interface TouchedSpot extends Spot {
  readonly zoom: number
}

/** Marks that a finger can take hold of and set. */
export interface Edit {
  readonly marks: readonly Spot[]
  readonly picked: number | undefined
  readonly onPick: (number: number) => void
  readonly onMove: (number: number, to: TouchedSpot) => void
  readonly onMoved: () => void
  readonly onPlace: (at: TouchedSpot) => void
  /** A touch beside the image, which sets nothing. */
  readonly onOutside: () => void
}

type Doing =
  // A finger that may still become any of the others.
  | { kind: 'touch'; from: Spot }
  | { kind: 'shift'; at: Spot }
  | { kind: 'place'; at: Spot }
  // A finger that takes hold beside the mark keeps its distance: the mark does not jump.
  | { kind: 'hold'; number: number; beside: Spot; moving: boolean }
  | { kind: 'stroke'; points: readonly Spot[] }
  | { kind: 'pinch'; middle: Spot; apart: number }

/**
 * A touch sets a mark, also beside or on another one. A finger that moves takes the mark that it is on along, else the
 * image; one that rests picks the mark that it is on, else sets one where it lets go. Two fingers zoom and shift.
 * Where strokes are drawn one finger draws. `under` is the spot of the image that the magnifier shows, `stroke` what is
 * being drawn.
 */
export function useGestures(board: Given) {
  const fingers = useRef(new Map<number, Spot>())
  const doing = useRef<Doing | undefined>(undefined)
  const rests = useRef<ReturnType<typeof setTimeout>>(undefined)
  const last = useRef<{ at: Spot; ms: number }>(undefined)
  const [under, setUnder] = useState<Spot>()
  const [stroke, setStroke] = useState<readonly Spot[]>([])
  const { image, pane, view, edit } = board
  // A finger that rests is answered by a timer, which must not see what was drawn before.
  const now = useRef(board)
  now.current = board
  useEffect(() => () => clearTimeout(rests.current), [])

  const down = (event: PointerEvent) => {
    if (event.button !== 0) return
    ;(event.currentTarget as Element).setPointerCapture(event.pointerId)
    fingers.current.set(event.pointerId, spotOf(event))
    clearTimeout(rests.current)
    if (fingers.current.size === 2) {
      const [a, b] = [...fingers.current.values()] as [Spot, Spot]
      doing.current = { kind: 'pinch', middle: middle(a, b), apart: apart(a, b) }
      setUnder(undefined)
      setStroke([])
    } else if (fingers.current.size === 1) {
      const from = spotOf(event)
      doing.current = edit ? { kind: 'touch', from } : { kind: 'shift', at: from }
      if (board.onStroke) draw([], from)
      if (edit) rests.current = setTimeout(() => rest(from), HOLD_MS)
    }
  }

  const draw = (before: readonly Spot[], at: Spot) => {
    const points = [...before, onImage(view, at)]
    doing.current = { kind: 'stroke', points }
    setStroke(points)
  }

  const rest = (from: Spot) => {
    const { image, view, edit } = now.current
    const hold = holdAt(now.current, from)
    doing.current = hold ?? { kind: 'place', at: from }
    if (hold) edit?.onPick(hold.number)
    setUnder(hold ? edit?.marks[hold.number] : inside(onImage(view, from), image))
  }

  const move = (event: PointerEvent) => {
    if (!fingers.current.has(event.pointerId)) return
    const at = spotOf(event)
    fingers.current.set(event.pointerId, at)
    if (doing.current?.kind === 'touch') {
      if (apart(doing.current.from, at) < STILL_PX) return
      clearTimeout(rests.current)
      doing.current = holdAt(board, doing.current.from) ?? { kind: 'shift', at: doing.current.from }
      if (doing.current.kind === 'hold') edit?.onPick(doing.current.number)
    }
    const going = doing.current
    if (going?.kind === 'pinch') pinch(going)
    else if (going?.kind === 'stroke') draw(going.points, at)
    else if (going?.kind === 'shift') {
      board.setView(moved(view, { x: at.x - going.at.x, y: at.y - going.at.y }, image, pane))
      going.at = at
    } else if (going?.kind === 'place') {
      going.at = at
      setUnder(inside(onImage(view, at), image))
    } else if (going?.kind === 'hold') {
      going.moving = true
      const to = inside(onImage(view, { x: at.x + going.beside.x, y: at.y + going.beside.y }), image)
      edit?.onMove(going.number, { ...to, zoom: view.zoom })
      setUnder(to)
    }
  }

  const pinch = (before: Extract<Doing, { kind: 'pinch' }>) => {
    const [a, b] = [...fingers.current.values()]
    if (!a || !b) return
    const next = { kind: 'pinch' as const, middle: middle(a, b), apart: apart(a, b) }
    const by = { x: next.middle.x - before.middle.x, y: next.middle.y - before.middle.y }
    board.setView(zoomed(moved(view, by, image, pane), next.apart / (before.apart || 1), next.middle, image, pane))
    doing.current = next
  }

  const up = (event: PointerEvent) => {
    if (!fingers.current.delete(event.pointerId)) return
    const was = doing.current
    // Of two fingers the one that stays does nothing until it is lifted as well.
    if (was?.kind === 'touch') place(was.from)
    if (was?.kind === 'place') place(was.at)
    if (was?.kind === 'hold' && was.moving) edit?.onMoved()
    if (was?.kind === 'stroke') board.onStroke?.(was.points)
    over()
  }

  const place = (at: Spot) => {
    const again = last.current && Date.now() - last.current.ms < AGAIN_MS && apart(last.current.at, at) < AGAIN_PX
    last.current = { at, ms: Date.now() }
    if (again) return
    const spot = onImage(view, at)
    if (outside(spot, image)) edit?.onOutside()
    else edit?.onPlace({ ...spot, zoom: view.zoom })
  }

  const over = () => {
    clearTimeout(rests.current)
    doing.current = undefined
    setUnder(undefined)
    setStroke([])
  }

  const cancel = (event: PointerEvent) => {
    fingers.current.delete(event.pointerId)
    over()
  }

  const wheel = (event: WheelEvent) => {
    event.preventDefault()
    board.setView(zoomed(view, event.deltaY < 0 ? 1.25 : 0.8, spotOf(event), image, pane))
  }

  return {
    under,
    stroke,
    on: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel, onWheel: wheel },
  }
}

function spotOf(event: PointerEvent | WheelEvent): Spot {
  const { left, top } = (event.currentTarget as Element).getBoundingClientRect()
  return { x: event.clientX - left, y: event.clientY - top }
}

const middle = (a: Spot, b: Spot): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

/** Taking hold of the mark that a finger is on: the nearest of those in reach. */
function holdAt({ view, edit }: Pick<Given, 'view' | 'edit'>, at: Spot) {
  let hold: Extract<Doing, { kind: 'hold' }> | undefined
  let least = Number.POSITIVE_INFINITY
  edit?.marks.forEach((mark, number) => {
    const place = onScreen(view, mark)
    const far = apart(place, at)
    if (far > (number === edit.picked ? PICKED_PX : OTHER_PX) || far >= least) return
    least = far
    hold = { kind: 'hold', number, beside: { x: place.x - at.x, y: place.y - at.y }, moving: false }
  })
  return hold
}
