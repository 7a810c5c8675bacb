import { arcsOf, type Mark } from '@/marks/line'
import { onScreen, type Size, type Spot, standingApart, type View } from './view'

/** A place that is shown on a line: where the work ends, another stop, the tip of an instrument and where it is expected. */
export interface LineSpot {
  readonly at: Spot
  readonly says: string
  readonly kind: 'end' | 'stop' | 'tip' | 'expected'
}

/** A line of marks as it is drawn. */
export interface Marked {
  readonly name: string
  readonly points: readonly Spot[]
  readonly straightTo: number
  /** The one that is worked on; the others are only looked at. */
  readonly active: boolean
  readonly picked?: number | undefined
  readonly spots?: readonly LineSpot[]
  /** Its name stands at its first mark and not at its last. */
  readonly nameFirst?: boolean
  /** Drawn broken: somebody else's, or what it is compared with. */
  readonly broken?: boolean
}

const SIGNS: Readonly<Record<LineSpot['kind'], string>> = {
  end: 'M-9 0h18',
  stop: 'M-5 0h10',
  tip: 'M-7 -7l7 7l7 -7',
  expected: 'M-9 0h5M4 0h5',
}

const SAYS_PX = 90 // what the longest word at a spot takes of the width
const SAYS_HIGH_PX = 15 // and what a word takes of the height
const NAME_PX = 20 // what a name takes of the height; one at a spot stands below it

export function MarkedLine({ line, view, room }: { line: Marked; view: View; room: Size }) {
  const places = line.points.map((point) => onScreen(view, point))
  const drawn = drawnPath(line, view)
  const named = line.nameFirst ? places[0] : places.at(-1)
  const below = line.spots?.some(({ at }) => named && Math.abs(onScreen(view, at).y - named.y) < NAME_PX)
  return (
    <g
      class="marked-line"
      data-drawn="line"
      data-active={line.active || undefined}
      data-broken={line.broken || undefined}
    >
      <path class="under" d={drawn} />
      <path class="over" d={drawn} />
      {places.map(({ x, y }, i) => (
        <g
          key={i}
          transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
          data-picked={line.picked === i || undefined}
        >
          <circle class="ring" data-drawn={line.active ? 'mark' : 'other mark'} r={line.active ? 9 : 4} />
          {line.active && <path class="cross" d="M-14 0h8M6 0h8M0 -14v8M0 6v8" />}
        </g>
      ))}
      <Spots spots={line.spots ?? []} view={view} room={room} />
      {named && (
        <text class="name" x={named.x + 14} y={named.y + (line.nameFirst ? -8 : below ? NAME_PX : 5)}>
          {line.name}
        </text>
      )}
    </g>
  )
}

interface SpotsProps {
  spots: readonly LineSpot[]
  view: View
  room: Size
}

/** What is marked stands to the left of the line, what is planned to the right where there is room for it: both lie at
 * nearly one place. What would stand over another moves up, and a thin line leads back to it. */
function Spots({ spots, view, room }: SpotsProps) {
  const placed = spots.map((spot) => {
    const { x, y } = onScreen(view, spot.at)
    return { ...spot, x, y, left: spot.kind === 'tip' || x > room.width - SAYS_PX }
  })
  const says = [true, false].flatMap((left) => {
    const here = placed.filter((spot) => spot.left === left)
    const heights = standingApart(
      here.map(({ y, kind }) => y + (kind === 'expected' ? -14 : 4)),
      SAYS_HIGH_PX,
    )
    return here.map((spot, i) => ({ ...spot, up: (heights[i] ?? 0) - spot.y }))
  })
  return (
    <>
      {says.map(({ kind, says, x, y, left, up }) => (
        <g
          key={`${kind} ${says}`}
          class="spot"
          data-kind={kind}
          transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
        >
          <path d={SIGNS[kind]} />
          {up < -SAYS_HIGH_PX && <path class="leader" d={`M${left ? -6 : 6} 0L${left ? -24 : 24} ${up - 4}`} />}
          <text x={(left ? -1 : 1) * (up < -SAYS_HIGH_PX ? 27 : 13)} y={up} text-anchor={left ? 'end' : 'start'}>
            {says}
          </text>
        </g>
      ))}
    </>
  )
}

/** The smooth line that is measured, as a path in the pane: an arc from mark to mark. */
export function drawnPath({ points, straightTo }: Marked, view: View): string {
  const marks = points.map(({ x, y }): Mark => [x, y])
  const [first] = points
  if (!first || marks.length < 2) return ''
  const arcs = arcsOf(marks, straightTo).map(({ to: [x, y], radius }) => {
    const to = inPath(onScreen(view, { x, y }))
    if (radius === undefined) return `L${to}`
    const r = (Math.abs(radius) * view.zoom).toFixed(1)
    return `A${r} ${r} 0 0 ${radius > 0 ? 1 : 0} ${to}`
  })
  return `M${inPath(onScreen(view, first))}${arcs.join('')}`
}

const inPath = ({ x, y }: Spot) => `${x.toFixed(1)} ${y.toFixed(1)}`
