import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { profile, standing } from '@/parts/depth-board/geometry'
import { Bracket, InHand } from '@/parts/depth-board/in-hand'
import type { Silhouette } from '@/parts/depth-board/shape'
import { useElementSize } from '@/parts/element-size'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { type Axis, axisOf, boardOf, type WorkedCanal, yAt } from './geometry'
import { type Range, Strip } from './strip'
import './canal-picture.css'

interface Props {
  canal: WorkedCanal
  /** What goes into it; nothing where the step has none. */
  instrument?: { readonly name: string; readonly outline: Silhouette } | undefined
  expected?: Range | undefined
  /** Where its tip is; nothing before it was touched. */
  depth_um: number | undefined
  /** Where it stopped the time before. */
  last_um?: number | null
  /** Without it there is no strip to drag the tip along. */
  onDepth?: ((depth_um: number | undefined) => void) | undefined
  hand: 'right' | 'left'
  /** What stands at the other side of the canal from the strip, on the same axis. */
  children?: (axis: Axis, height: number) => ComponentChildren
}

const STRIP_PX = 64 // its width, and of the way to the canal
const CANAL_MOST_PX = 176

/** The canal being worked, drawn large as it is now: the instrument in it, its stop, and the strip for the thumb. */
export function CanalPicture(props: Props) {
  const { canal, instrument, expected, depth_um, last_um = null, onDepth, hand, children } = props
  const { room, measured, ref } = useElementSize({ width: 220, height: 300 })
  const axis = axisOf(room.height, canal)
  return (
    <div class="canal-picture" data-hand={hand}>
      {measured && children?.(axis, room.height)}
      <div class="canal-room" ref={ref}>
        {measured && (
          <Drawn
            {...props}
            width={Math.min(CANAL_MOST_PX, room.width - (onDepth ? STRIP_PX : 0))}
            height={room.height}
          />
        )}
        {measured && onDepth && (
          <Strip
            axis={axis}
            height={room.height}
            width={STRIP_PX}
            stop_um={canal.stop_um}
            depth_um={depth_um}
            last_um={last_um}
            name={instrument?.name ?? ''}
            expected={expected}
            onDepth={onDepth}
          />
        )}
      </div>
    </div>
  )
}

function Drawn({ canal, instrument, expected, depth_um, width, height }: Props & { width: number; height: number }) {
  const id = useId()
  const axis = axisOf(height, canal)
  const silhouette = instrument?.outline ?? []
  const board = boardOf(axis, width, height, canal.wall, silhouette)
  const whole = { board, index: 0, canal: { end_mm: null }, side: 0 } as const
  const place = { ...whole, canal }
  const tip_mm = depth_um === undefined ? axis.from_mm + 1 : depth_um / 1000
  const wall = profile(place, canal.wall)
  const at = (depth_mm: number) => yAt(axis, depth_mm * 1000)
  const half = width * 0.4
  return (
    <svg
      class="drawn"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={saysOf(canal, depth_um, instrument?.name)}
    >
      <clipPath id={id}>
        <polygon points={profile(whole, standing(silhouette, tip_mm))} />
      </clipPath>
      {wall && <polyline class="wall" points={wall} />}
      {instrument && (
        <g data-held={depth_um === undefined}>
          <InHand place={whole} silhouette={silhouette} tip_mm={tip_mm} />
        </g>
      )}
      {/* Where the instrument is the wider one it binds: there the wall is seen through it. */}
      {wall && <polyline class="wall-under" points={wall} clip-path={`url(#${id})`} />}
      {canal.end_mm !== null && canal.end_mm * 1000 !== canal.stop_um && (
        <line
          class="canal-end"
          x1={width / 2 - half}
          x2={width / 2 + half}
          y1={at(canal.end_mm)}
          y2={at(canal.end_mm)}
        />
      )}
      {canal.stop_um !== null && (
        <line
          class="canal-stop"
          data-drawn="stop"
          x1={width / 2 - half}
          x2={width / 2 + half}
          y1={yAt(axis, canal.stop_um)}
          y2={yAt(axis, canal.stop_um)}
        />
      )}
      {expected && <Bracket step={expected} x={width - 10} at={at} />}
    </svg>
  )
}

function saysOf(
  { canal, stop_um, end_mm }: WorkedCanal,
  depth_um: number | undefined,
  instrument: string | undefined,
): string {
  return words.depth.picture({
    canal,
    stop: stop_um === null ? undefined : mm(stop_um / 1000),
    end: end_mm === null ? undefined : mm(end_mm),
    instrument,
    tip: depth_um === undefined ? undefined : mm(depth_um / 1000),
  })
}
