import { useEffect, useRef, useState } from 'preact/hooks'
import { words } from '@/words/en'
import { type Edit, useGestures } from './gestures'
import './image-board.css'
import { Loupe } from './loupe'
import { type Marked, MarkedLine } from './marked-line'
import { squareEdit, squareLine, squareSize, squareSpot } from './square'
import { Drawn, inTheMiddle, outOfSight, type Strokes, strokeOf } from './strokes'
import { fitted, type Link, linked, linkOf, moved, nearTo, type Size, type Spot, type View, zoomed } from './view'

export interface Near {
  readonly at: Spot
  readonly zoom: number
}

export interface Look {
  readonly brightness: number
  readonly contrast: number
  readonly invert: boolean
}

interface Props {
  readonly src: string
  /** In pixels, as marks are. */
  readonly image: Size
  /** How much taller than wide a pixel is. */
  readonly rowPerColumn: number
  readonly look: Look
  /** Every line on the image; the one that is worked on last, so that it lies on top. */
  readonly lines: readonly Marked[]
  /** Left out where the image is only looked at. */
  readonly edit?: Edit
  /** Black that a finger draws; two fingers move the image then. */
  readonly strokes?: Strokes
  /** What it is called, and what its keys do. */
  readonly says?: { readonly board: string; readonly keys: string }
  /** A spot to look at, at a zoom; another value looks anew. */
  readonly near?: Near | undefined
  /** What is shown of it, where another image shows the same. */
  readonly link?: Link | undefined
  readonly onLink?: (link: Link) => void
  /** Beside nearer and farther, under the image. */
  readonly children?: preact.ComponentChildren
}

const STEP = 1.5 // of one touch on nearer or farther

/** An image that is zoomed and shifted, with lines of marks on it, a magnifier under the finger, and keys. */
export function ImageBoard(props: Props) {
  const { src, rowPerColumn, look, link, onLink, near, strokes, says = words.marks, children, ...board } = props
  const image = squareSize(board.image, rowPerColumn)
  const edit = board.edit && squareEdit(board.edit, rowPerColumn)
  const pane = useRef<HTMLDivElement>(null)
  const room = useElementSize(pane)
  const [view, setView] = useState<View>()
  const shown = link ? linked(link, image, room) : (view ?? fitted(image, room))
  const show = (next: View) => (onLink ? onLink(linkOf(next, image, room)) : setView(next))
  const onStroke = strokes && ((points: readonly Spot[]) => strokes.onDraw([strokeOf(points, shown)]))
  const hidden = strokes ? outOfSight(shown, image, room) : []
  const gestures = useGestures({ image, pane: room, view: shown, setView: show, edit, onStroke })
  const filter = `brightness(${look.brightness}) contrast(${look.contrast}) invert(${look.invert ? 1 : 0})`
  const nearer = (factor: number) => show(zoomed(shown, factor, { x: room.width / 2, y: room.height / 2 }, image, room))
  const lines = board.lines.map((line) => squareLine(line, rowPerColumn))
  // Asked for from outside, a spot comes into the middle, nearer.
  useEffect(() => {
    if (near) show(nearTo(squareSpot(near.at, rowPerColumn), near.zoom, image, room))
  }, [near])
  // What was drawn lies where nobody looks: the whole is shown.
  const keepSight = () => {
    strokes?.onDraw(hidden)
    show(fitted(image, room))
  }
  const key = (event: KeyboardEvent) => {
    const by = WAYS[event.key]
    const mark = edit?.picked === undefined ? undefined : edit.marks[edit.picked]
    if (event.key === '+') nearer(STEP)
    else if (event.key === '-') nearer(1 / STEP)
    else if (event.key === '0') show(fitted(image, room))
    else if (event.key === 'Enter' && strokes) strokes.onDraw([inTheMiddle(shown, room)])
    else if (by && mark && edit?.picked !== undefined) {
      edit.onMove(edit.picked, { x: mark.x + by.x / 2, y: mark.y + by.y / 2, zoom: shown.zoom })
      edit.onMoved()
    } else if (by) show(moved(shown, { x: -40 * by.x, y: -40 * by.y }, image, room))
    else return
    event.preventDefault()
  }
  return (
    <div class="image-board">
      <div
        ref={pane}
        class="image-pane in-the-dark"
        role="application"
        aria-label={says.board}
        data-strokes={strokes && true}
        aria-describedby="image-keys"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes keys
        tabIndex={0}
        onKeyDown={key}
        {...gestures.on}
      >
        <img
          data-drawn="image"
          src={src}
          alt=""
          width={image.width}
          height={image.height}
          style={{ transform: `translate(${shown.x}px, ${shown.y}px) scale(${shown.zoom})`, filter }}
          draggable={false}
        />
        <svg aria-hidden="true">
          {strokes && <Drawn strokes={strokes.drawn} view={shown} />}
          {gestures.stroke.length > 0 && <Drawn strokes={[strokeOf(gestures.stroke, shown)]} view={shown} />}
          {lines.map((line) => (
            <MarkedLine key={`${line.name} ${line.broken ?? ''}`} line={line} view={shown} room={room} />
          ))}
        </svg>
        {edit && (
          <Loupe
            src={src}
            image={image}
            at={gestures.under}
            zoom={shown.zoom}
            filter={filter}
            view={shown}
            room={room}
            line={lines.find(({ active }) => active)}
          />
        )}
      </div>
      <p id="image-keys" class="unseen">
        {says.keys}
      </p>
      <div class="image-tools">
        {children}
        {strokes && (
          <button type="button" class="button wide" disabled={hidden.length === 0} onClick={keepSight}>
            {words.images.lookFirst.keep}
          </button>
        )}
        <button type="button" class="button" aria-label={words.marks.farther} onClick={() => nearer(1 / STEP)}>
          −
        </button>
        <button type="button" class="button" aria-label={words.marks.whole} onClick={() => show(fitted(image, room))}>
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d="M4 9V4h5M20 9V4h-5M4 15v5h5M20 15v5h-5" fill="none" stroke="currentColor" stroke-width="2" />
          </svg>
        </button>
        <button type="button" class="button" aria-label={words.marks.nearer} onClick={() => nearer(STEP)}>
          +
        </button>
      </div>
    </div>
  )
}

const WAYS: Readonly<Record<string, Spot>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
}

/** The pane's own size, followed. */
function useElementSize(of: { readonly current: HTMLElement | null }): Size {
  const [room, setRoom] = useState<Size>({ width: 1, height: 1 })
  useEffect(() => {
    const element = of.current
    if (!element) return
    const look = () => setRoom({ width: element.clientWidth || 1, height: element.clientHeight || 1 })
    look()
    const watch = new ResizeObserver(look)
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return room
}
