import type { ExpectedStep } from '@/api/shapes'
import { centreOf, type Place, profile, standing, yOf } from './geometry'
import type { Silhouette } from './shape'

interface InHandProps {
  place: Place
  silhouette: Silhouette
  tip_mm: number
}

/** The instrument at true taper with its tip at a depth, and its shaft up to the reference point. */
export function InHand({ place, silhouette, tip_mm }: InHandProps) {
  const widths = standing(silhouette, tip_mm)
  const { board, index } = place
  const x = centreOf(board, index)
  const top_mm = widths[0]?.from_reference_mm ?? tip_mm
  return (
    <g class="in-hand" data-drawn="in hand">
      <line x1={x} x2={x} y1={yOf(board, 0) - 8} y2={yOf(board, top_mm)} />
      <polygon points={profile(place, widths)} />
    </g>
  )
}

const STRIP = 5 // width of a faint band, beside the canal
const CAP = 5

interface ExpectedProps {
  place: Place
  steps: readonly ExpectedStep[]
  now: ExpectedStep | undefined
  /** How many of the steps are done; nothing where the plan is shown as a whole. */
  done: number | undefined
}

/** Beside the canal: every step's band, faint, with a mark at its median; the present one's as a bracket; what was felt. */
export function Expected({ place: { board, index }, steps, now, done }: ExpectedProps) {
  const left = board.gutter + board.column * index + 3
  const right = left + board.column - 14
  const recorded = steps.slice(0, done).filter((step) => step.felt != null)
  return (
    <g class="expected">
      {steps.map((step, i) => (
        <Faint
          key={`${step.node}${step.pass_number}`}
          step={step}
          x={left}
          at={(mm) => yOf(board, mm)}
          ahead={i >= (done ?? 0)}
        />
      ))}
      {now && now.felt == null && <Bracket step={now} x={right} at={(mm) => yOf(board, mm)} />}
      {recorded.map((step) => (
        <path
          key={`felt ${step.node}${step.pass_number}`}
          class="felt"
          data-drawn="felt"
          d={`M${right} ${yOf(board, step.depth_mm)}l8 -4.5v9z`}
        />
      ))}
    </g>
  )
}

interface BracketProps {
  step: Pick<ExpectedStep, 'low_mm' | 'high_mm' | 'depth_mm'>
  x: number
  at: (mm: number) => number
}

function Faint({ step: { low_mm, high_mm, depth_mm }, x, at, ahead }: BracketProps & { ahead: boolean }) {
  const banded = low_mm != null && high_mm != null
  return (
    <g class={ahead ? 'faint' : 'faint past'}>
      {banded && <rect x={x} width={STRIP} y={at(low_mm)} height={at(high_mm) - at(low_mm)} />}
      <line data-drawn="expected" x1={x} x2={x + STRIP + 2} y1={at(depth_mm)} y2={at(depth_mm)} />
    </g>
  )
}

export function Bracket({ step: { low_mm, high_mm, depth_mm }, x, at }: BracketProps) {
  return (
    <g class="bracket">
      {low_mm != null && high_mm != null && (
        <path d={`M${x - CAP} ${at(low_mm)}h${CAP * 2}m${-CAP} 0V${at(high_mm)}m${-CAP} 0h${CAP * 2}`} />
      )}
      <circle data-drawn="expected now" cx={x} cy={at(depth_mm)} r="4.5" />
    </g>
  )
}
