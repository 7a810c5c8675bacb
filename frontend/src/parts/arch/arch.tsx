import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { words } from '@/words/en'
import { CROWNS, isLeft, isUpper, PLACES, QUADRANTS, type Quadrant, quadrantOf, type Spot, spotsAlong } from './spots'
import './arch.css'

// The drawing's own units; at 320 px of screen one of them is a pixel.
const WIDTH = 288
const HEIGHT = 228
const EDGE = 27
const WHOLE = { cx: WIDTH / 2, rx: 116, ry: 80 }
const BETWEEN = 5 // from the middle of the picture to where each jaw ends
const PLACE = 44
const SMALL_PLACE = 21

interface Props {
  /** ISO 3950 of the permanent tooth that is meant. */
  value: string | undefined
  onPick: (iso: string) => void
  /** What stands inside the arch once a tooth is picked. */
  children?: preact.ComponentChildren
}

/** The permanent teeth as they stand: first a quadrant is touched, then one of its teeth, which are drawn large. */
export function Arch({ value, onPick, children }: Props) {
  const of = quadrantOf(value)
  const [turned, setTurned] = useState<Quadrant | 'all'>()
  const open = turned ?? of
  const focus = useRef<'teeth' | Quadrant>(undefined)
  const root = useRef<HTMLFieldSetElement>(null)
  // Whatever else names a tooth, typing, shows it here.
  useLayoutEffect(() => setTurned(undefined), [value])
  useLayoutEffect(() => {
    const to = focus.current === 'teeth' ? 'input:checked, input' : `[data-quadrant="${focus.current}"]`
    if (focus.current) root.current?.querySelector<HTMLElement>(to)?.focus({ preventScroll: true })
    focus.current = undefined
  }, [open])
  const turnTo = (to: Quadrant | 'all') => {
    focus.current = to === 'all' && open !== 'all' ? open : 'teeth'
    setTurned(to)
  }
  return (
    <fieldset class="arch" ref={root}>
      <legend>{words.arch.tooth}</legend>
      <div class="arch-room">
        {open === undefined || open === 'all' ? (
          <Quadrants value={value} onOpen={turnTo} />
        ) : (
          <Teeth quadrant={open} value={value} onPick={onPick}>
            {of === open && children}
            <button type="button" class="button" onClick={() => turnTo('all')}>
              {words.arch.all}
            </button>
          </Teeth>
        )}
      </div>
    </fieldset>
  )
}

const cyOf = (quadrant: Quadrant) =>
  HEIGHT / 2 + (isUpper(quadrant) ? -BETWEEN : BETWEEN) - (isUpper(quadrant) ? 12 : -12)

function Quadrants({ value, onOpen }: { value: string | undefined; onOpen: (quadrant: Quadrant) => void }) {
  return (
    <>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {QUADRANTS.flatMap((quadrant) =>
          spotsAlong({ ...WHOLE, cy: cyOf(quadrant) }, quadrant, 0.055).map((spot, i) => (
            <Crown key={`${quadrant}${i}`} spot={spot} at={i} size={SMALL_PLACE} on={value === `${quadrant}${i + 1}`} />
          )),
        )}
      </svg>
      {QUADRANTS.map((quadrant) => (
        <button
          key={quadrant}
          type="button"
          class="arch-quadrant"
          data-quadrant={quadrant}
          data-side={isLeft(quadrant) ? 'left' : 'right'}
          data-jaw={isUpper(quadrant) ? 'upper' : 'lower'}
          onClick={() => onOpen(quadrant)}
        >
          <span>{words.arch.quadrants[quadrant]}</span>
          <span class="number">{words.arch.range(`${quadrant}1`, `${quadrant}8`)}</span>
        </button>
      ))}
    </>
  )
}

type TeethProps = Props & { quadrant: Quadrant }

function Teeth({ quadrant, value, onPick, children }: TeethProps) {
  const [left, upper] = [isLeft(quadrant), isUpper(quadrant)]
  const quarter = { rx: WIDTH - 2 * EDGE, ry: HEIGHT - 2 * EDGE }
  const spots = spotsAlong({ ...quarter, cx: left ? WIDTH - EDGE : EDGE, cy: upper ? HEIGHT - EDGE : EDGE }, quadrant)
  return (
    <>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {spots.map((spot, i) => (
          <Crown key={PLACES[i]} spot={spot} at={i} size={PLACE} on={value === `${quadrant}${i + 1}`}>
            {`${quadrant}${i + 1}`}
          </Crown>
        ))}
      </svg>
      {spots.map(({ x, y }, i) => {
        const iso = `${quadrant}${i + 1}`
        return (
          <input
            key={iso}
            type="radio"
            name="tooth"
            value={iso}
            checked={value === iso}
            aria-label={words.arch.name(iso)}
            style={{ left: `${(100 * x) / WIDTH}%`, top: `${(100 * y) / HEIGHT}%` }}
            onChange={() => onPick(iso)}
          />
        )
      })}
      <div class="arch-inside" data-side={left ? 'left' : 'right'} data-jaw={upper ? 'upper' : 'lower'}>
        {children}
      </div>
    </>
  )
}

interface CrownProps {
  spot: Spot
  at: number
  size: number
  on: boolean
  children?: string
}

/** A tooth seen from its chewing surface. */
function Crown({ spot: { x, y, turned_deg }, at, size, on, children }: CrownProps) {
  const { across = 1, deep = 1, round = 0 } = CROWNS[at] ?? {}
  const [width, height] = [across * size, deep * size]
  const place = `translate(${x.toFixed(1)} ${y.toFixed(1)})`
  return (
    <g class="crown" data-on={on} transform={place}>
      <g transform={`rotate(${turned_deg.toFixed(1)})`}>
        <rect x={-width / 2} y={-height / 2} width={width} height={height} rx={round * width} />
      </g>
      {children && <text y={5}>{children}</text>}
    </g>
  )
}
