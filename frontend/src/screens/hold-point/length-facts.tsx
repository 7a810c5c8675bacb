import type { CanalPlan } from '@/api/shapes'
import { Sign, type SignName } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import '@/parts/list.css'

const SIGNS: Record<string, SignName> = { settled: 'approved', estimated: 'caution' }
const SAYS: Record<string, string> = { settled: words.hold.agree, estimated: words.hold.estimate }

/** The length of the canal, what it rests on, and whether its readings agree. */
export function LengthFacts({ canal: { length, end_mm } }: { canal: CanalPlan }) {
  const rests = length.rests_on.map(words.method)
  const alone = length.state === 'settled' && length.readings.filter((reading) => reading.counts).length === 1
  return (
    <section class="card stack close">
      <div class="row apart">
        <h2>{words.hold.length}</h2>
        <span class="hold-length number">{end_mm === null ? '–' : mm(end_mm)}</span>
      </div>
      <p>{rests.length > 0 ? words.hold.restsOn(rests) : words.hold.noLength}</p>
      <p class="strong">
        <Sign name={alone ? 'note' : (SIGNS[length.state] ?? 'stop')} />{' '}
        {alone ? words.hold.single : (SAYS[length.state] ?? words.hold.disagree)}
      </p>
      <ul class="ledger">
        {length.readings.map((reading, i) => (
          <li key={`${i}${reading.method}`} class="figure">
            <p class="row apart">
              <b>{words.reading.short[reading.method] ?? reading.method}</b>
              <span class="number">{reading.working_length_mm === null ? '–' : mm(reading.working_length_mm)}</span>
            </p>
            <p class="small soft">
              {reading.counts ? words.hold.counts : words.hold.countsNot}: {reading.why}
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}
