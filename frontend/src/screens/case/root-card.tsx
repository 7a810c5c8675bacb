import type { CaseShown, Pattern, RootInput } from '@/api/shapes'
import { Choice, Select } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { changeRoot, useTooth } from '@/store/cache/cases'
import { useAutoSave } from '@/store/forms/auto-save'
import { words } from '@/words/en'

const PATTERNS: readonly Pattern[] = ['unknown', 'separate', '2-1', '1-2', '2-1-2', '1-2-1']
const JOINING: readonly Pattern[] = ['2-1', '1-2-1']

/** How the canals of a root run, and which of them goes to the end where two join: a person chooses. */
export function RootCard({ root: charted, of }: { root: RootInput; of: CaseShown }) {
  const [root, sending, change] = useAutoSave(charted, ({ pattern, main_canal }) =>
    changeRoot(of, charted.name, { pattern, main_canal: main_canal ?? null }),
  )
  const canals = of.canals.filter((c) => c.root === root.name)
  const proposed = useTooth(of.tooth.iso).value?.main_canals.find((m) => m.root === root.name)
  const joins = JOINING.includes(root.pattern)
  const unmeasured =
    joins && root.main_canal ? canals.filter((c) => c.name !== root.main_canal && c.junctions.length === 0) : []
  return (
    <section class="card stack" aria-label={words.chart.root(root.name)}>
      <h2>{words.chart.root(root.name)}</h2>
      <Select
        label={words.chart.pattern}
        value={root.pattern}
        wrong={sending.problem?.at('pattern')}
        options={PATTERNS.map((value) => ({ value, says: words.chart.patterns[value] ?? value }))}
        onChoose={(pattern) => change({ pattern: pattern as Pattern })}
      />
      {joins && (
        <Choice
          label={words.chart.main}
          value={root.main_canal ?? undefined}
          wrong={sending.problem?.at('main_canal')}
          hint={proposed && words.chart.proposed(proposed.canal, proposed.reason)}
          options={canals.map((c) => ({ value: c.name, says: c.name }))}
          onChoose={(main_canal) => change({ main_canal })}
        />
      )}
      {unmeasured.map((canal) => (
        <Notice key={canal.id} sign="caution">
          <a href={`/cases/${of.id}/canals/${canal.id}?method=junction`}>{words.chart.joinNeeded(canal.name)}</a>
        </Notice>
      ))}
      <Sent sending={sending} fields={['pattern', 'main_canal']} />
    </section>
  )
}
