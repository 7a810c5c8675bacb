import type { CanalShown, Length } from '@/api/shapes'
import { Sign, type SignName } from '@/parts/signs'
import { mm, tenth } from '@/units/millimetres'
import { words } from '@/words/en'

export const SIGNS: Record<Length['state'], SignName> = {
  missing: 'draft',
  estimated: 'waiting',
  settled: 'approved',
  to_settle: 'caution',
  unsettled: 'stop',
}

/** One canal: its length so far, what that rests on, and what to do next. */
export function CanalRow({ of, caseId }: { of: CanalShown; caseId: string }) {
  return (
    <a class="entry canal-row" href={`/cases/${caseId}/canals/${of.id}`}>
      <span class="canal-head">
        <b class="canal-title">{of.name}</b>
        <small class="soft">{of.reference_point}</small>
      </span>
      <span class="grow">
        <LengthSays of={of} />
      </span>
      <LengthNumber of={of.length} />
    </a>
  )
}

/** The stop in millimetres; an estimate is marked as one by a word beside it. */
export function LengthNumber({ of }: { of: Length | null }) {
  const shown = of?.stop_mm ?? of?.estimate_mm ?? null
  return <span class="length-number number">{shown === null ? '–' : mm(shown)}</span>
}

/** State of the length, what it rests on, and what to do. */
export function LengthSays({ of: { length: of, length_problem } }: { of: CanalShown }) {
  if (!of) return <span class="small strong block">{length_problem}</span>
  const methods = of.rests_on.map((m) => words.method(m))
  return (
    <>
      <span class="length-state" data-state={of.state}>
        <Sign name={SIGNS[of.state]} /> {words.lengthState(of.state)}
      </span>
      {methods.length > 0 && <span class="small soft block">{words.chart.restsOn(methods)}</span>}
      {of.state === 'estimated' && of.estimated && (
        <span class="small soft block">
          {words.chart.estimatedBetween(
            tenth(of.estimated.least_mm),
            tenth(of.estimated.most_mm),
            words.chart.scaleBy(of.estimated.rests_on),
          )}
        </span>
      )}
      {of.state !== 'settled' && of.what_to_do && <span class="small block">{of.what_to_do}</span>}
    </>
  )
}
