import { useEffect, useRef, useState } from 'preact/hooks'
import { mm, readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import { type Axis, DETENT_UM, detents, dragged, stepped, taken, yAt } from './geometry'

/** Where an instrument is expected to stop; the range is where most do. */
export interface Range {
  readonly depth_mm: number
  readonly low_mm: number | null
  readonly high_mm: number | null
}

interface Props {
  axis: Axis
  height: number
  width: number
  stop_um: number | null
  depth_um: number | undefined
  last_um: number | null
  name: string
  expected: Range | undefined
  /** Nothing where what is typed is no depth on the strip: one that stood before does not stand for it. */
  onDepth: (depth_um: number | undefined) => void
}

const DETENT_MS = 5 // of vibration: felt, and over before the next
const KEYS: Record<string, number> = {
  ArrowUp: -1,
  ArrowLeft: -1,
  ArrowDown: 1,
  ArrowRight: 1,
  PageUp: -4,
  PageDown: 4,
}
const NUMBERED_PX = 14 // millimetres that lie closer are numbered by twos

/** The tip's depth, dragged from anywhere on the strip, stepped by keys or typed; nothing is set before that. */
export function Strip(props: Props) {
  const { axis, height, width, stop_um, depth_um, last_um, name, expected, onDepth } = props
  const all = detents(axis, stop_um)
  const [refused, setRefused] = useState(false)
  const put = (um: number | undefined) => {
    setRefused(false)
    onDepth(um)
  }
  const drag = useDrag({ ...props, onDepth: put }, all)
  const onKeyDown = useKeys({ ...props, onDepth: put }, all, () => setRefused(true))
  const every = axis.px_per_mm < NUMBERED_PX ? 2 : 1
  const marks = Array.from({ length: axis.to_mm - axis.from_mm + 1 }, (_, i) => axis.from_mm + i)
  const strip = (
    <div class="strip" data-empty={depth_um === undefined} style={{ width: `${width}px` }} {...drag}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {marks.map((each) => (
          <g key={each}>
            <line x1={0} x2={each % every ? 6 : 11} y1={yAt(axis, each * 1000)} y2={yAt(axis, each * 1000)} />
            {each % every === 0 && (
              <text x={17} y={yAt(axis, each * 1000) + 4.5}>
                {each}
              </text>
            )}
          </g>
        ))}
        {last_um !== null && <circle class="last" cx={width - 8} cy={yAt(axis, last_um)} r={4} />}
        {stop_um !== null && (
          <line class="canal-stop" x1={0} x2={width} y1={yAt(axis, stop_um)} y2={yAt(axis, stop_um)} />
        )}
      </svg>
      <output
        class="handle"
        aria-hidden="true"
        style={{ top: `${depth_um === undefined ? axis.top : yAt(axis, depth_um)}px` }}
      >
        {depth_um === undefined ? '↓' : mm(depth_um / 1000)}
      </output>
      <input
        type="range"
        min={all[0]}
        max={all.at(-1)}
        step={DETENT_UM}
        value={depth_um ?? first(props, all)}
        aria-orientation="vertical"
        aria-label={words.depth.slider(name)}
        aria-valuetext={depthSays(depth_um, stop_um, expected) || words.depth.notSet}
        onKeyDown={onKeyDown}
        onInput={(event) => put(Number(event.currentTarget.value))}
      />
    </div>
  )
  return (
    <>
      {strip}
      {refused && (
        <p class="refused-depth small" role="alert">
          {words.depth.refused(mm(axis.from_mm), mm(axis.to_mm))}
        </p>
      )}
    </>
  )
}

/** Stepping begins where it stopped the time before, else one short of its stop: never at what is expected. */
function first({ stop_um, last_um }: Props, all: readonly number[]): number {
  return last_um ?? (stop_um === null ? (all[0] ?? 0) : stepped(all, stop_um, -1))
}

/** The first touch takes the tip to the finger; from there on it is moved by as much as the finger is. */
function useDrag({ axis, depth_um, onDepth }: Props, all: readonly number[]) {
  const held = useRef<{ y: number; from_um: number } | undefined>(undefined)
  const felt = useRef(depth_um)
  useEffect(() => {
    if (held.current && felt.current !== depth_um) navigator.vibrate?.(DETENT_MS)
    felt.current = depth_um
  }, [depth_um])
  const release = () => {
    held.current = undefined
  }
  return {
    onPointerDown: (event: PointerEvent & { currentTarget: HTMLDivElement }) => {
      event.preventDefault()
      event.currentTarget.setPointerCapture?.(event.pointerId)
      event.currentTarget.querySelector('input')?.focus({ preventScroll: true })
      const from_um = depth_um ?? taken(axis, all, event.clientY - event.currentTarget.getBoundingClientRect().top)
      held.current = { y: event.clientY, from_um }
      if (depth_um === undefined) onDepth(from_um)
    },
    onPointerMove: ({ clientY }: PointerEvent) => {
      if (held.current) onDepth(dragged(axis, all, held.current.from_um, clientY - held.current.y))
    },
    onPointerUp: release,
    onPointerCancel: release,
  }
}

/** Keys step; digits are read as a depth as soon as they are one on the strip, and refused once they can be none. */
function useKeys(props: Props, all: readonly number[], refuse: () => void) {
  const [typed, setTyped] = useState('')
  const { depth_um, onDepth } = props
  const most = all.at(-1) ?? 0
  const least = all[0] ?? 0
  return (event: KeyboardEvent) => {
    const by = KEYS[event.key]
    const end = { Home: least, End: most }[event.key]
    if (by !== undefined) onDepth(depth_um === undefined ? first(props, all) : stepped(all, depth_um, by))
    else if (end !== undefined) onDepth(end)
    else if (!/^[\d.,]$/.test(event.key)) return setTyped('')
    event.preventDefault()
    if (by !== undefined || end !== undefined) return setTyped('')
    const now = `${typed}${event.key}`
    const um = Math.round((readMm(now) ?? 0) * 1000)
    onDepth(um >= least && um <= most ? um : undefined)
    if (um > most) refuse()
    setTyped(um > most ? '' : now)
  }
}

/** A depth against its stop and what is expected, in words; empty before it is set. */
export function depthSays(depth_um: number | undefined, stop_um: number | null, expected: Range | undefined): string {
  if (depth_um === undefined) return ''
  const short_um = stop_um === null ? undefined : stop_um - depth_um
  return words.depth.says({
    depth: mm(depth_um / 1000),
    short:
      short_um === undefined
        ? undefined
        : { isPast: short_um < 0, mm: mm(Math.abs(short_um) / 1000), isAt: short_um === 0 },
    lies: expected && against(depth_um / 1000, expected),
  })
}

function against(depth_mm: number, { low_mm, high_mm }: Range): 'in' | 'above' | 'below' | undefined {
  if (low_mm === null || high_mm === null) return undefined
  if (depth_mm < low_mm) return 'above'
  return depth_mm > high_mm ? 'below' : 'in'
}
