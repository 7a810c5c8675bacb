import type { CaseShown, Factor } from '@/api/shapes'
import { Select } from '@/parts/fields'
import { Known } from '@/parts/known'
import { Seen } from '@/parts/seen'
import { Sent } from '@/parts/sent'
import { changeCase, useFactors } from '@/store/cache/cases'
import { useAutoSave } from '@/store/forms/auto-save'
import { words } from '@/words/en'

const GROUPS = ['patient', 'diagnosis', 'tooth', 'additional'] as const

/** What makes the case difficult, as a person sees it; what the plan works out by itself is added there. */
export function DifficultyFactors({ of }: { of: CaseShown }) {
  const answered = useFactors()
  const [{ factors }, sending, change] = useAutoSave({ factors: of.factors }, (_, chosen) => changeCase(of.id, chosen))
  // A block has no patient, and its canals are what they were made to be.
  if (of.setting === 'block') return null
  return (
    <details>
      <summary>{words.difficulty.record(factors.length)}</summary>
      <div class="stack">
        <p class="small soft">{words.difficulty.recordHint}</p>
        <Seen of={answered} rows={6}>
          {(all) => (
            <>
              {GROUPS.map((group) => (
                <Group
                  key={group}
                  group={group}
                  factors={all.filter((factor) => factor.group === group)}
                  recorded={factors}
                  onChange={(next) => change({ factors: next })}
                />
              ))}
              <Sources factors={all} />
            </>
          )}
        </Seen>
        <Sent sending={sending} />
      </div>
    </details>
  )
}

interface GroupProps {
  group: Factor['group']
  factors: readonly Factor[]
  recorded: readonly string[]
  onChange: (recorded: string[]) => void
}

function Group({ group, factors, recorded, onChange }: GroupProps) {
  return (
    <section class="stack">
      <h3>{words.difficulty.groups[group]}</h3>
      {factors.map(({ key, title, levels, from_plan }) => {
        const others = recorded.filter((code) => !levels.some((level) => level.code === code))
        return (
          <Select
            key={key}
            label={title}
            hint={from_plan ? words.difficulty.alsoFromPlan : undefined}
            value={levels.find((level) => recorded.includes(level.code))?.code ?? ''}
            options={[
              { value: '', says: words.difficulty.notRecorded },
              ...levels.map(({ code, level, says }) => ({ value: code, says: words.difficulty.option(level, says) })),
            ]}
            onChoose={(code) => onChange(code === '' ? others : [...others, code])}
          />
        )
      })}
    </section>
  )
}

/** Where the factors are from, once for all that share a source. */
function Sources({ factors }: { factors: readonly Factor[] }) {
  const sources = [...new Map(factors.map(({ source, know }) => [source + know, { source, know }])).values()]
  return sources.map(({ source, know }) => (
    <div key={source + know}>
      <p class="small soft">{source}</p>
      <Known know={know} />
    </div>
  ))
}
