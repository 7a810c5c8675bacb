import type { Caution, Plan } from '@/api/shapes'
import { Known } from '@/parts/known'
import { Sign, type SignName } from '@/parts/signs'
import { words } from '@/words/en'
import './cautions.css'

const RANK = { stop: 0, caution: 1, note: 2 } as const

/** What must be put right first, then cautions, then notes; what was let pass after the rest of its kind. */
export function byWeight(cautions: readonly Caution[]): Caution[] {
  const rank = (c: Caution) => RANK[c.severity] + (c.overridden == null ? 0 : 0.5)
  return [...cautions].sort((a, b) => rank(a) - rank(b))
}

interface Props {
  plan: Pick<Plan, 'cautions' | 'canals' | 'rows_used' | 'tray_list'>
  /** What can be done about one here, where there is anything. */
  act?: ((caution: Caution) => preact.ComponentChildren) | undefined
}

/**
 * Each caution with its value against the limit, what to do, what it rests on, and whether it was let pass. Notes, which
 * stand in nearly every plan, take one line until they are opened.
 */
export function Cautions({ plan, act }: Props) {
  if (plan.cautions.length === 0) return <p class="soft">{words.cautions.none}</p>
  const notes = plan.cautions.filter((c) => c.severity === 'note')
  return (
    <div class="stack">
      <Cards plan={plan} act={act} cautions={byWeight(plan.cautions.filter((c) => c.severity !== 'note'))} />
      {notes.length > 0 && (
        <details>
          <summary>
            <Sign name="note" /> {words.cautions.notes(notes.length)}
          </summary>
          <Cards plan={plan} act={act} cautions={notes} />
        </details>
      )}
    </div>
  )
}

function Cards({ plan, act, cautions }: Props & { cautions: readonly Caution[] }) {
  return (
    <ul class="stack">
      {cautions.map((caution, i) => (
        <li key={`${i}${caution.code}`} class="caution-card" data-severity={caution.severity}>
          <p class="caution-head">
            <Sign name={caution.severity satisfies SignName} /> {words.state[caution.severity]}
            {caution.canal && ` · ${caution.canal}`}
            {at(plan, caution)}
          </p>
          <p>{caution.says}</p>
          {caution.value != null && caution.limit != null && (
            <p class="measured">
              <b class="number">{words.cautions.value(caution.value, caution.unit)}</b>{' '}
              {words.cautions.limit(caution.limit, caution.unit)}
            </p>
          )}
          <p class="strong">{caution.do}</p>
          <p class="small soft">{words.cautions.restsOn(source(plan, caution))}</p>
          {caution.know && <Known know={caution.know} />}
          {caution.overridden != null && (
            <p class="overridden">
              <Sign name="approved" /> <b>{words.cautions.overridden}</b> {caution.overridden}
            </p>
          )}
          {act?.(caution)}
        </li>
      ))}
    </ul>
  )
}

/** The figure's source where the caution is held against a figure; otherwise the rule it names. */
function source({ rows_used }: Props['plan'], { row }: Caution): string {
  return rows_used.find((used) => used.key === row)?.source ?? row
}

/** The instrument of the step it concerns. */
function at({ canals, tray_list }: Props['plan'], { canal, step }: Caution): string {
  const node = canals.find((c) => c.canal === canal)?.run_sheet.nodes[step ?? '']
  if (node?.kind !== 'do' || !node.instrument) return ''
  const known = tray_list.find((item) => item.instrument.key === node.instrument)
  return ` · ${known?.instrument.name ?? node.instrument}`
}

type Counted = Pick<Caution, 'severity' | 'overridden'>

/** How many have to be put right and how many are cautions, in one line; nothing where there is none. */
export function CautionCount({ cautions }: { cautions: readonly Counted[] }) {
  const standing = cautions.filter((c) => c.overridden == null)
  const bars = standing.filter((c) => c.severity === 'stop').length
  const others = standing.filter((c) => c.severity === 'caution').length
  const passed = cautions.length - standing.length
  if (bars + others + passed === 0) return null
  return (
    <span class="caution-count">
      {bars > 0 && (
        <span data-severity="stop">
          <Sign name="stop" /> {words.cautions.toPutRight(bars)}
        </span>
      )}
      {others > 0 && (
        <span data-severity="caution">
          <Sign name="caution" /> {words.cautions.cautions(others)}
        </span>
      )}
      {passed > 0 && (
        <span>
          <Sign name="approved" /> {words.cautions.passed(passed)}
        </span>
      )}
    </span>
  )
}
