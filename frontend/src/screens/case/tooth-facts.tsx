import type { CaseShown } from '@/api/shapes'
import { Tick } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changeCase } from '@/store/cases'
import { useWanted } from '@/store/wanted'
import { words } from '@/words/en'

const FACTS = [
  ['isolated', words.chart.isolated],
  ['root_filled', words.chart.rootFilled],
  ['perforation', words.chart.perforation],
] as const

/** What else bears on the whole tooth; each is sent when it is ticked. */
export function ToothFacts({ of }: { of: CaseShown }) {
  const { isolated, root_filled, perforation } = of
  const [facts, sending, change] = useWanted({ isolated, root_filled, perforation }, (all) => changeCase(of.id, all))
  return (
    <section class="stack close">
      <h2>{words.chart.caseFacts}</h2>
      {FACTS.map(([fact, label]) => (
        <Tick key={fact} label={label} checked={facts[fact]} onChange={(on) => change({ [fact]: on })} />
      ))}
      <Sent sending={sending} />
    </section>
  )
}
