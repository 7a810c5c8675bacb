import type { CaseShown } from '@/api/shapes'
import { Tick } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changeCase } from '@/store/cases'
import { useSending } from '@/store/sending'
import { words } from '@/words/en'

const FACTS = [
  ['isolated', words.chart.isolated],
  ['root_filled', words.chart.rootFilled],
  ['perforation', words.chart.perforation],
] as const

/** What else bears on the whole tooth; each is sent when it is ticked. */
export function ToothFacts({ of }: { of: CaseShown }) {
  const [sending, run] = useSending()
  return (
    <section class="stack close">
      <h2>{words.chart.caseFacts}</h2>
      {FACTS.map(([fact, label]) => (
        <Tick
          key={fact}
          label={label}
          checked={of[fact]}
          onChange={(on) => void run(() => changeCase(of, { [fact]: on }))}
        />
      ))}
      <Sent sending={sending} />
    </section>
  )
}
