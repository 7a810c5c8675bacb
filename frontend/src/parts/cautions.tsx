import type { Caution } from '@/api/shapes'
import { Sign, type SignName } from '@/parts/signs'
import { words } from '@/words/en'
import './cautions.css'

const RANK = { stop: 0, caution: 1, note: 2 } as const

/** Stops first, then cautions, then notes; the planner's order within each. */
export function byWeight(cautions: readonly Caution[]): Caution[] {
  return [...cautions].sort((a, b) => RANK[a.severity] - RANK[b.severity])
}

export function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  if (cautions.length === 0) return <p class="soft">{words.cautions.none}</p>
  return (
    <ul class="stack">
      {byWeight(cautions).map((caution, i) => (
        <li key={`${i}${caution.code}`} class="caution-card" data-severity={caution.severity}>
          <p class="caution-head">
            <Sign name={caution.severity satisfies SignName} /> {words.state[caution.severity]}
            {caution.canal && ` · ${caution.canal}`}
          </p>
          <p>{caution.says}</p>
          <p class="strong">{caution.do}</p>
          <p class="small soft">{measure(caution)}</p>
        </li>
      ))}
    </ul>
  )
}

function measure({ value, limit, unit, row }: Caution): string {
  const figures = value != null && limit != null ? `${value} ${unit ?? ''} (${words.cautions.limit} ${limit}). ` : ''
  return `${figures}${words.cautions.restsOn(row)}`
}

/** How many stops and cautions there are, in one line; nothing where there is none. */
export function CautionCount({ cautions }: { cautions: readonly Pick<Caution, 'severity'>[] }) {
  const stops = cautions.filter((c) => c.severity === 'stop').length
  const others = cautions.filter((c) => c.severity === 'caution').length
  if (stops + others === 0) return null
  return (
    <span class="caution-count">
      {stops > 0 && (
        <span data-severity="stop">
          <Sign name="stop" /> {words.cautions.stops(stops)}
        </span>
      )}
      {others > 0 && (
        <span data-severity="caution">
          <Sign name="caution" /> {words.cautions.cautions(others)}
        </span>
      )}
    </span>
  )
}
