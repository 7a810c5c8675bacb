import type { Waiting, WaitList } from '@/api/shapes'
import { OLD_S } from '@/parts/as-of'
import { LevelMark } from '@/parts/difficulty'
import { Seen } from '@/parts/seen'
import { Sign } from '@/parts/signs'
import { useWaiting } from '@/store/cache/review'
import { words } from '@/words/en'

/** The list beside the plan on a laptop, with its age. */
export function WaitingList({ current }: { current?: string }) {
  const waiting = useWaiting()
  return (
    <Seen of={waiting} rows={4} old_s={OLD_S}>
      {(page) => <WaitingRows {...page} current={current} />}
    </Seen>
  )
}

export function WaitingRows({ results, next, current }: WaitList & { current?: string | undefined }) {
  if (results.length === 0) return <p class="soft">{words.worklist.empty}</p>
  return (
    <>
      <ul class="ledger">
        {results.map((plan) => (
          <li key={plan.version_id}>
            <WaitingRow of={plan} on={plan.version_id === current} />
          </li>
        ))}
      </ul>
      {next !== null && <p class="small soft">{words.worklist.more(results.length)}</p>}
    </>
  )
}

function WaitingRow({ of, on }: { of: Waiting; on: boolean }) {
  return (
    <a class="entry waiting-row" href={`/plans/${of.version_id}`} aria-current={on ? 'page' : undefined}>
      <span class="tooth-number">{of.tooth.iso}</span>
      <span class="grow">
        <b class="block">{words.worklist.plan(of.patient_alias, of.number)}</b>
        <span class="small block">{words.worklist.asks[of.asks]}</span>
        <span class="small soft block">{of.student.name}</span>
        {of.difficulty && <LevelMark level={of.difficulty} />}
      </span>
      <span class="waiting-side">
        <span class="small">{words.worklist.waits(of.waiting_s)}</span>
        {of.stops > 0 && <Count sign="stop" n={of.stops} says={words.cautions.toPutRight(of.stops)} />}
        {of.cautions > 0 && <Count sign="caution" n={of.cautions} says={words.cautions.cautions(of.cautions)} />}
        {of.stale && <span class="small strong">{words.worklist.stale}</span>}
      </span>
    </a>
  )
}

function Count({ sign, says }: { sign: 'stop' | 'caution'; n: number; says: string }) {
  return (
    <span class="caution-count">
      <span data-severity={sign}>
        <Sign name={sign} /> {says}
      </span>
    </span>
  )
}

/** The first of the plans that wait beside the one on the screen. */
export function NextPlan({ current }: { current: string }) {
  const next = useWaiting().value?.results.find((plan) => plan.version_id !== current)
  if (!next) return null
  return (
    <a class="button plain" href={`/plans/${next.version_id}`}>
      {words.review.next(next.student.name, next.tooth.iso, next.number)}
    </a>
  )
}
