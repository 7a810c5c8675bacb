import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './depth-ruler.css'

const HALF_MM_UM = 500 // the resolution of a stop
const PAST_STOP_UM = 2000 // a depth past the stop is a fact too; beyond this the buttons go on

interface Props {
  depth: number | undefined
  stop: number | null
  /** Where this instrument stopped the time before. */
  last: number | null
  /** Where the canal begins. */
  orifice: number
  onDepth: (depth_um: number) => void
}

/** A depth by dragging along a ruler or in half millimetres. It starts empty: nothing is set before it is touched. */
export function DepthRuler({ depth, stop, last, orifice, onDepth }: Props) {
  const most = Math.max((stop ?? orifice) + PAST_STOP_UM, depth ?? 0)
  const least = Math.min(Math.floor(orifice / 1000) * 1000, depth ?? most)
  // Stepping begins where it stopped the time before, else one step short of its stop: never at what is expected.
  const from = last ?? Math.max(0, (stop ?? orifice) - HALF_MM_UM)
  const by = (step: number) => onDepth(depth === undefined ? from : Math.max(0, depth + step))
  const at = (um: number) => `${((um - least) / (most - least)) * 100}%`
  const touched = (event: Event) => onDepth(Number((event.currentTarget as HTMLInputElement).value))
  return (
    <div class="depth-ruler">
      <button type="button" class="button" aria-label={words.card.less} onClick={() => by(-HALF_MM_UM)}>
        −
      </button>
      <div class="ruler" data-empty={depth === undefined || undefined}>
        <div class="marks" aria-hidden="true" style={{ '--mm': String((most - least) / 1000) }}>
          {stop !== null && <i class="stop" style={{ left: at(stop) }} />}
          {last !== null && <i class="last" style={{ left: at(last) }} />}
        </div>
        <input
          type="range"
          min={least}
          max={most}
          step={HALF_MM_UM}
          value={depth ?? from}
          aria-label={words.card.depth}
          aria-valuetext={depth === undefined ? words.chair.notTouched : `${mm(depth / 1000)} mm`}
          onInput={touched}
          onPointerUp={touched}
        />
        <p class="small soft" aria-hidden="true">
          <span>{mm(least / 1000)}</span>
          {last !== null && <span>{words.card.lastTime(mm(last / 1000))}</span>}
          <span>{mm(most / 1000)}</span>
        </p>
      </div>
      <button type="button" class="button" aria-label={words.card.more} onClick={() => by(HALF_MM_UM)}>
        +
      </button>
    </div>
  )
}
