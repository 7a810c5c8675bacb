import type { Anatomy, CaseShown } from '@/api/shapes'
import { Select, Tick } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changeCase } from '@/store/cache/cases'
import { useAutoSave } from '@/store/forms/auto-save'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'

/** A dam belongs to a patient; a training block has neither a filling nor a perforation. */
const FACTS = [
  ['isolated', words.chart.isolated, ['clinic']],
  ['root_filled', words.chart.rootFilled, ['clinic', 'extracted']],
  ['perforation', words.chart.perforation, ['clinic', 'extracted']],
] as const

const ANATOMIES: readonly Anatomy[] = ['usual', 'fused_or_c_shaped', 'charted_by_supervisor']

/** What else bears on the whole tooth; each is sent when it is chosen. */
export function ToothFacts({ of }: { of: CaseShown }) {
  const { isolated, root_filled, perforation, anatomy } = of
  const charted = { isolated, root_filled, perforation, anatomy }
  const [facts, sending, change] = useAutoSave(charted, (_, chosen) => changeCase(of.id, chosen))
  const supervisor = membership.value?.role === 'supervisor'
  const offered = ANATOMIES.filter((a) => supervisor || a !== 'charted_by_supervisor' || a === facts.anatomy)
  return (
    <section class="stack close">
      <h2>{words.chart.caseFacts}</h2>
      {FACTS.filter(([, , settings]) => (settings as readonly string[]).includes(of.setting)).map(([fact, label]) => (
        <Tick key={fact} label={label} checked={facts[fact]} onChange={(on) => change({ [fact]: on })} />
      ))}
      <Select
        label={words.chart.anatomy}
        value={facts.anatomy}
        wrong={sending.problem?.at('anatomy')}
        options={offered.map((value) => ({ value, says: words.chart.anatomies[value] ?? value }))}
        onChoose={(value) => change({ anatomy: value as Anatomy })}
      />
      <Sent sending={sending} fields={['anatomy']} />
    </section>
  )
}
