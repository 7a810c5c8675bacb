import { useId } from 'preact/hooks'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './lengths-board.css'

/** A canal as far as its length is known. */
export interface MeasuredCanal {
  readonly id: string
  readonly name: string
  readonly state: 'not measured' | 'estimated' | 'settled' | 'to settle' | 'unsettled'
  /** From the reference point; none where nothing was measured. */
  readonly length_mm: number | null
  /** Between what the tooth ends, by its image. */
  readonly between: { readonly least_mm: number; readonly most_mm: number } | null
  /** How long its root usually is; none where that is not known. */
  readonly usual_mm: number | null
  /** A reading waits on this phone. */
  readonly waits: boolean
}

interface Props {
  canals: readonly MeasuredCanal[]
  onOpen?: ((id: string) => void) | undefined
}

// The drawing's own units. A canal is drawn as a sign of one: only its length means something.
const COLUMN = 72
const GUTTER = 26
const TOP = 26
const DEEP = 150
const BOTTOM = 24
const HEIGHT = TOP + DEEP + BOTTOM
const HALF_TOP = 11
const HALF_END = 4
const HALF_LINE = 15
const LEAST_DEEP_MM = 20

/** All canals of a tooth on one axis of millimetres, each as sure as it is known; one that is touched is measured. */
export function LengthsBoard({ canals, onOpen }: Props) {
  const hatch = `hatch-${useId()}`
  const ends = canals.flatMap((c) => [c.length_mm ?? c.usual_mm ?? 0, c.between?.most_mm ?? 0])
  const deepest_mm = Math.ceil(Math.max(LEAST_DEEP_MM, ...ends))
  const y = (depth_mm: number) => TOP + (depth_mm / deepest_mm) * DEEP
  const width = GUTTER + COLUMN * canals.length
  const share = (x: number) => `${(100 * x) / width}%`
  const marks = Array.from({ length: Math.floor(deepest_mm / 5) + 1 }, (_, i) => 5 * i)
  return (
    <div class="lengths-board" style={{ maxWidth: `${Math.min(width * 1.3, 560)}px` }}>
      <svg viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={words.lengthsBoard.name}>
        <defs>
          <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line class="hatch" x1="0" y1="0" x2="0" y2="5" />
          </pattern>
        </defs>
        {marks.map((depth_mm) => (
          <g key={depth_mm} class="axis">
            <line
              class={depth_mm === 0 ? 'reference' : 'grid'}
              x1={GUTTER}
              x2={width}
              y1={y(depth_mm)}
              y2={y(depth_mm)}
            />
            <text x={GUTTER - 6} y={y(depth_mm) + 4}>
              {depth_mm}
            </text>
          </g>
        ))}
        {canals.map((canal, i) => (
          <Column key={canal.id} canal={canal} x={GUTTER + COLUMN * (i + 0.5)} y={y} hatch={hatch} />
        ))}
      </svg>
      {onOpen &&
        canals.map(({ id, name }, i) => (
          <button
            key={id}
            type="button"
            aria-label={words.measure.openOne(name)}
            style={{ left: share(GUTTER + COLUMN * i), width: share(COLUMN) }}
            onClick={() => onOpen(id)}
          />
        ))}
    </div>
  )
}

interface ColumnProps {
  canal: MeasuredCanal
  x: number
  y: (depth_mm: number) => number
  hatch: string
}

function Column({ canal: { name, state, length_mm, between, usual_mm, waits }, x, y, hatch }: ColumnProps) {
  const end_mm = length_mm ?? usual_mm
  const sure = state === 'settled'
  return (
    <g class="measured" data-state={state.replace(' ', '-')}>
      <text class="name" x={x} y={16}>
        {name}
      </text>
      {state === 'to settle' && <path class="asks" d={`M${x + 24} 5l6 11h-12z`} />}
      {state === 'unsettled' && <path class="stops" d={`M${x + 18} 5h11v11h-11z`} />}
      {end_mm !== null && (
        <path
          class="body"
          d={`M${x - HALF_TOP} ${y(0)}L${x - HALF_END} ${y(end_mm)}H${x + HALF_END}L${x + HALF_TOP} ${y(0)}Z`}
          fill={sure || length_mm === null ? undefined : `url(#${hatch})`}
        />
      )}
      {between && !sure && (
        <rect
          class="between"
          x={x - HALF_LINE}
          y={y(between.least_mm)}
          width={2 * HALF_LINE}
          height={y(between.most_mm) - y(between.least_mm)}
        />
      )}
      {length_mm !== null && (
        <line class="end" x1={x - HALF_LINE} x2={x + HALF_LINE} y1={y(length_mm)} y2={y(length_mm)} />
      )}
      <text class="says" x={x} y={y(end_mm ?? 0) + 18}>
        {waits
          ? words.measure.here
          : length_mm === null
            ? words.lengthsBoard.measure
            : words.lengthsBoard.length(mm(length_mm), sure)}
      </text>
    </g>
  )
}
