import { mm } from '@/units/millimetres'
import { CanalEnd } from './canal-end'
import { centreOf, NARROW_PX, orifice, type Place, profile, yOf } from './geometry'
import { Expected, InHand } from './in-hand'
import type { DrawnProgress } from './moments'
import type { BoardCanal, CoronalStop, Silhouette, Width } from './shape'

interface Props {
  place: Place
  canal: BoardCanal
  before: BoardCanal | undefined
  coronal: CoronalStop | undefined
  hatch: string
  picked: boolean
  /** How far the work has come; nothing shows the plan as a whole. */
  progress: DrawnProgress | undefined
  silhouettes: ReadonlyMap<string, Silhouette>
}

/** One canal: access, its initial shape and what is prepared, the instrument in hand, coronal stop, end and its label. */
export function CanalColumn({ place, canal, before, coronal, hatch, picked, progress, silhouettes }: Props) {
  const now = progress?.now?.canal === canal.canal ? progress.now.step : undefined
  const instrument = now && silhouettes.get(now.instrument)
  return (
    <g class="canal" data-length={canal.provisional ? 'estimate' : 'firm'} data-picked={picked}>
      <Access place={place} outline={canal.outline} hatch={hatch} />
      <Prepared place={place} canal={canal} before={before} prepared={prepared(canal, progress)} />
      {now && instrument && <InHand place={place} silhouette={instrument} tip_mm={now.depth_mm} />}
      {coronal && !now && <CoronalMark place={place} stop_mm={coronal.stop_mm} />}
      <CanalEnd place={place} canal={canal} before={before} />
      <Expected place={place} steps={canal.expectation?.steps ?? []} now={now} done={progress?.done.get(canal.canal)} />
    </g>
  )
}

/** The canal's shape as far as the work has come; in the plan as a whole, once everything has stood at its stop. */
function prepared(canal: BoardCanal, progress: DrawnProgress | undefined): readonly Width[] {
  const done = progress?.done.get(canal.canal)
  const of = canal.expectation
  return done === undefined ? canal.outline : (of?.steps[done - 1]?.shape ?? of?.prepared ?? [])
}

function Access({ place, outline, hatch }: { place: Place; outline: readonly Width[]; hatch: string }) {
  const at = orifice(place, outline)
  if (!at) return null
  const { board, index } = place
  const x = centreOf(board, index) - at.half
  return <rect x={x} y={board.top} width={at.half * 2} height={at.y - board.top} fill={hatch} />
}

interface PreparedProps extends Pick<Props, 'place' | 'canal' | 'before'> {
  prepared: readonly Width[]
}

function Prepared({ place, canal, before, prepared }: PreparedProps) {
  const initialShape = canal.expectation?.initial_shape.points ?? []
  const narrow = initialShape.map((p) => ({ from_reference_mm: p.from_reference_mm, diameter_mm: p.narrow_mm }))
  const wide = initialShape.map((p) => ({ from_reference_mm: p.from_reference_mm, diameter_mm: p.wide_mm }))
  const oval = initialShape.some((p) => p.wide_mm > p.narrow_mm)
  const drawn = profile(place, prepared)
  const old = before && profile(place, before.outline)
  return (
    <>
      {drawn && <polygon class="shape" points={drawn} />}
      {initialShape.length > 0 && <polygon class="initial-shape" points={profile(place, narrow)} />}
      {oval && <polygon class="initial-shape wide" points={profile(place, wide)} />}
      {old && old !== profile(place, canal.outline) && <polygon class="shape-before" points={old} />}
    </>
  )
}

function CoronalMark({ place: { board, index }, stop_mm }: { place: Place; stop_mm: number }) {
  const centre = centreOf(board, index)
  const y = yOf(board, stop_mm)
  const half = board.column * 0.42
  return (
    <g class="coronal">
      <line x1={centre - half} x2={centre + half} y1={y} y2={y} />
      {board.column >= NARROW_PX && (
        <text class="halo" data-drawn="coronal stop" x={centre + half} y={y - 4}>
          {mm(stop_mm)}
        </text>
      )}
    </g>
  )
}
