import type { RecordValue } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { words } from '@/words/en'

interface Props {
  of: RecordValue['deviations']
  /** Something was recorded. */
  begun: boolean
}

/** What was not as planned, a line each. */
export function Deviations({ of, begun }: Props) {
  return (
    <section class="stack close">
      <h2>{words.record.deviations(of.length)}</h2>
      {of.length === 0 && <p class="soft">{begun ? words.record.asPlanned : words.record.nothing}</p>}
      <ul class="ledger record-deviations">
        {of.map((each, i) => (
          <li key={`${i}${each.says}`}>
            <Sign name={each.sign} />
            <span>
              <b>{each.canal || words.record.tooth}</b> {each.says}
            </span>
            {each.position !== null && <span class="small soft number">{each.position}</span>}
          </li>
        ))}
      </ul>
    </section>
  )
}
