import type { TwoViewsRead } from '@/api/shapes'
import type { Way } from '@/panels/marks/two-markings'
import { words } from '@/words/en'

interface Props {
  tube: Way | undefined
  /** The canal that is asked for and the one it is held against. */
  canal: string | undefined
  other: string | undefined
  lies: TwoViewsRead['one_is'] | undefined
}

/** From above: the tube at the cheek, two canals one behind the other, the film at the tongue. */
export function TwoViewsDrawing({ tube, canal, other, lies }: Props) {
  // Mesial is drawn to the right. A line far from the film moves far, one near to it hardly.
  const turn = tube === 'mesial' ? 1 : tube === 'distal' ? -1 : 0
  const from = 120 + 60 * turn
  const onFilm = (y: number) => from + ((120 - from) * (150 - 20)) / (y - 20)
  const known = lies === 'buccal' || lies === 'lingual'
  const nameAt = (side: 'buccal' | 'lingual') => (lies === side ? canal : other)
  return (
    <svg class="two-views" viewBox="0 0 240 172" role="img" aria-label={words.marks.drawing}>
      <g class="soft">
        <path d="M20 150h200" />
        <text x="20" y="166">
          {words.marks.film}
        </text>
        <text x="220" y="60" text-anchor="end">
          {words.marks.cheek}
        </text>
        <text x="220" y="132" text-anchor="end">
          {words.marks.tongue}
        </text>
      </g>
      <rect x={from - 9} y="4" width="18" height="16" rx="3" class="tube" />
      {(['buccal', 'lingual'] as const).map((side, i) => {
        const y = [76, 112][i] ?? 0
        return (
          <g key={side} data-line={side} data-asked={(known && lies === side) || undefined}>
            <path d={`M${from} 20L${onFilm(y)} 150`} class="beam" />
            <circle cx="120" cy={y} r="6" />
            <circle cx={onFilm(y)} cy="150" r="4" />
            {known && (
              <text x="106" y={y + 4} text-anchor="end" class="told">
                {nameAt(side) ?? (lies === side ? words.marks.thisLine : '')}
              </text>
            )}
          </g>
        )
      })}
    </svg>
  )
}
