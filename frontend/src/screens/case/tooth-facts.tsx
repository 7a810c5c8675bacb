import type { Anatomy, CaseShown } from '@/api/shapes'
import { TOOTH_FACTS, type ToothFactName } from '@/parts/bounds'
import { Select, Tick } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changeCase } from '@/store/cache/cases'
import { useAutoSave } from '@/store/forms/auto-save'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'

const TICKS = Object.keys(TOOTH_FACTS) as ToothFactName[]

const ANATOMIES: readonly Anatomy[] = ['usual', 'fused_or_c_shaped', 'charted_by_supervisor']

/** What else bears on the whole tooth; each is sent when it is chosen. */
export function ToothFacts({ of }: { of: CaseShown }) {
  const ticked = Object.fromEntries(TICKS.map((fact) => [fact, of[fact]])) as Record<ToothFactName, boolean>
  const charted = { ...ticked, anatomy: of.anatomy }
  const [facts, sending, change] = useAutoSave(charted, (_, chosen) => changeCase(of.id, chosen))
  const supervisor = membership.value?.role === 'supervisor'
  const offered = ANATOMIES.filter((a) => supervisor || a !== 'charted_by_supervisor' || a === facts.anatomy)
  return (
    <section class="stack close">
      <h2>{words.chart.caseFacts}</h2>
      {TICKS.filter((fact) => TOOTH_FACTS[fact].settings.includes(of.setting)).map((fact) => (
        <Tick
          key={fact}
          label={words.capital(TOOTH_FACTS[fact].label)}
          checked={facts[fact]}
          onChange={(on) => change({ [fact]: on })}
        />
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
