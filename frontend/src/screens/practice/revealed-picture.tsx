import type { ActDone, RevealedCanal } from '@/api/shapes'
import { axisOf, boardOf, yAt } from '@/parts/canal-picture/geometry'
import { profile } from '@/parts/depth-board/geometry'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './practice.css'

interface Props {
  of: RevealedCanal
  wrong: readonly ActDone[]
}

const WIDTH = 200
const HEIGHT = 280

/** One canal as it was, dashed, over what the work made of it; each mistake by the number of its step at its depth. */
export function RevealedPicture({ of, wrong }: Props) {
  const { canal, was, now, block_mm, ledge_mm, over_wide_mm } = of
  const axis = axisOf(HEIGHT, { canal, wall: was, end_mm: was.at(-1)?.from_reference_mm ?? null, stop_um: null })
  const board = boardOf(axis, WIDTH, HEIGHT, [...was, ...now], [])
  const place = { board, index: 0, canal: { end_mm: null }, side: 0 } as const
  const says = [
    block_mm !== null && words.practice.block(mm(block_mm)),
    ledge_mm !== null && words.practice.ledge(mm(ledge_mm)),
    over_wide_mm > 0 && words.practice.wider(mm(over_wide_mm)),
  ].filter((each) => each !== false)
  return (
    <figure class="card stack close revealed">
      <figcaption class="strong">{[canal, ...says].join(', ')}</figcaption>
      <svg
        width={WIDTH + 60}
        height={HEIGHT}
        viewBox={`0 0 ${WIDTH + 60} ${HEIGHT}`}
        role="img"
        aria-label={words.practice.picture(canal)}
      >
        <polygon class="now" points={profile(place, now) ?? ''} />
        <polygon class="was" points={profile(place, was) ?? ''} />
        {wrong.map(({ number, depth_mm, stop_mm }) => {
          const y = yAt(axis, (depth_mm ?? stop_mm) * 1000)
          return (
            <g key={number}>
              <path class="place" d={`M${WIDTH - 10} ${y}l8 -4.5v9z`} />
              <text x={WIDTH + 4} y={y + 4}>
                {number}
              </text>
            </g>
          )
        })}
      </svg>
      <span class="small soft">
        - - {words.practice.was}, ▬ {words.practice.now}
      </span>
    </figure>
  )
}
