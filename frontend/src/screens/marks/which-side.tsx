import { useState } from 'preact/hooks'
import type { TwoViewsRead } from '@/api/shapes'
import { Choice } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { readTwoViews } from '@/store/markings'
import { useSending } from '@/store/sending'
import { words } from '@/words/en'

type Way = 'mesial' | 'distal'
type Moved = Way | 'hardly'

const WAYS: readonly Way[] = ['mesial', 'distal']
const MOVED_MM: Record<Moved, number> = { mesial: 1, distal: -1, hardly: 0 } // only the way counts, not how far

/** Two lines that lie over each other: which one is nearer to the tongue, by a second view with the tube moved. */
export function WhichSide() {
  const [tube, setTube] = useState<Way>()
  const [moved, setMoved] = useState<Moved>()
  const [found, setFound] = useState<TwoViewsRead>()
  const [sending, run] = useSending()
  const ask = (to: Way | undefined, line: Moved | undefined) => {
    setTube(to)
    setMoved(line)
    setFound(undefined)
    if (!to || !line) return
    const shift = { tube: to, first_mm: 0, second_mm: MOVED_MM[line] }
    void run(async () => setFound(await readTwoViews({ shift, bends: null })))
  }
  return (
    <details class="which-side">
      <summary>{words.marks.whichSide}</summary>
      <div class="stack">
        <p>{words.marks.whichSideSays}</p>
        <Drawing tube={tube} />
        <Choice
          label={words.marks.tubeMoved}
          options={WAYS.map((value) => ({ value, says: words.marks.way[value] }))}
          value={tube}
          onChoose={(to) => ask(to, moved)}
        />
        <Choice
          label={words.marks.lineMoved}
          options={[...WAYS, 'hardly' as const].map((value) => ({ value, says: words.marks.way[value] }))}
          value={moved}
          onChoose={(line) => ask(tube, line)}
        />
        {found?.one_is && (
          <Notice sign={found.one_is === 'cannot_tell' ? 'caution' : 'approved'}>
            <b>{words.marks.lies[found.one_is]}</b> {found.why}
          </Notice>
        )}
        <Sent sending={sending} again={() => ask(tube, moved)} />
      </div>
    </details>
  )
}

/** From above: the tube at the cheek, two canals one behind the other, the film at the tongue. */
function Drawing({ tube }: { tube: Way | undefined }) {
  // Mesial is drawn to the right. A line far from the film moves far, one near to it hardly.
  const turn = tube === 'mesial' ? 1 : tube === 'distal' ? -1 : 0
  const from = 120 + 60 * turn
  const onFilm = (y: number) => from + ((120 - from) * (150 - 20)) / (y - 20)
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
      {[76, 112].map((y, i) => (
        <g key={y} data-line={i === 0 ? 'buccal' : 'lingual'}>
          <path d={`M${from} 20L${onFilm(y)} 150`} class="beam" />
          <circle cx="120" cy={y} r="6" />
          <circle cx={onFilm(y)} cy="150" r="4" />
        </g>
      ))}
    </svg>
  )
}
