import { useRef, useState } from 'preact/hooks'
import { apart, kept, middle, type Placing, type Point, WHOLE, zoomed } from './zoom'

const STEP = 1.5
const ARROW_PX = 40

/** Zoom and move by two fingers, one finger, the wheel, keys and buttons. */
export function useZoom() {
  const frame = useRef<HTMLDivElement>(null)
  const fingers = useRef(new Map<number, Point>())
  const [placing, setPlacing] = useState<Placing>(WHOLE)
  const place = (change: (from: Placing) => Placing) => {
    const box = frame.current?.getBoundingClientRect()
    setPlacing((from) => kept(change(from), box ?? { width: 0, height: 0 }))
  }
  const fromMiddle = (event: { clientX: number; clientY: number }): Point => {
    const box = frame.current?.getBoundingClientRect()
    if (!box) return { x: 0, y: 0 }
    return { x: event.clientX - box.left - box.width / 2, y: event.clientY - box.top - box.height / 2 }
  }
  const by = (factor: number, at: Point = { x: 0, y: 0 }) => place((from) => zoomed(from, factor, at))
  const onPointerDown = (event: PointerEvent) => {
    frame.current?.setPointerCapture?.(event.pointerId)
    fingers.current.set(event.pointerId, fromMiddle(event))
  }
  const onPointerMove = (event: PointerEvent) => {
    const before = [...fingers.current.values()]
    const was = fingers.current.get(event.pointerId)
    if (!was) return
    const now = fromMiddle(event)
    fingers.current.set(event.pointerId, now)
    const [a, b] = before
    if (!b) return place(({ scale, x, y }) => ({ scale, x: x + now.x - was.x, y: y + now.y - was.y }))
    const [c, d] = [...fingers.current.values()]
    if (!a || !c || !d) return
    const [from, to] = [middle(a, b), middle(c, d)]
    place((placed) => {
      const larger = zoomed(placed, apart(c, d) / Math.max(1, apart(a, b)), from)
      return { ...larger, x: larger.x + to.x - from.x, y: larger.y + to.y - from.y }
    })
  }
  const lift = (event: PointerEvent) => void fingers.current.delete(event.pointerId)
  const onWheel = (event: WheelEvent) => {
    event.preventDefault()
    by(event.deltaY < 0 ? STEP ** 0.5 : STEP ** -0.5, fromMiddle(event))
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const move = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key]
    if (event.key === '+') by(STEP)
    else if (event.key === '-') by(1 / STEP)
    else if (event.key === '0') place(() => WHOLE)
    else if (move)
      place(({ scale, x, y }) => ({ scale, x: x + (move[0] ?? 0) * ARROW_PX, y: y + (move[1] ?? 0) * ARROW_PX }))
  }
  const hands = { onPointerDown, onPointerMove, onPointerUp: lift, onPointerCancel: lift, onWheel, onKeyDown }
  return { frame, placing, hands, larger: () => by(STEP), smaller: () => by(1 / STEP), whole: () => place(() => WHOLE) }
}
