import { type ComponentChildren, createContext } from 'preact'
import { useContext, useState } from 'preact/hooks'
import type { Plan, RowUsed } from '@/api/shapes'
import { CheckMark } from '@/parts/known'
import { words } from '@/words/en'
import { type Reasoned, reasonOf } from './paths'
import { Reason } from './reason'
import { Beside, RestsOn } from './rests-on'
import { Sheet } from './sheet'
import './why.css'

interface Question {
  /** None where the number is the tooth's. */
  readonly canal: string | undefined
  readonly title: string
  readonly value: string
  readonly reasons: readonly Reasoned[]
}

interface Reasons {
  readonly anyGiven: boolean
  /** Why the number at a path is what it is; nothing where the plan does not say. */
  find(canal: string | undefined, of: string, value: string): Reasoned | undefined
  rowsOf(reason: Reasoned): RowUsed[]
  show(asked: Question): void
}

const Plain = createContext<Reasons | undefined>(undefined)

/** Where the plan gives reasons: how to find them. */
export const useReasons = () => useContext(Plain)

/**
 * Lets every `Why` inside open the one sheet that says why: once around a screen, with the plan that its numbers are of.
 */
export function WithReasons({ plan, children }: { plan: Plan; children: ComponentChildren }) {
  const [asked, show] = useState<Question>()
  const of = (canal: string | undefined) => plan.canals.find((each) => each.canal === canal)
  const reasons: Reasons = {
    anyGiven: plan.canals.some((c) => c.rationales.length > 0),
    find: (canal, path, value) => reasonOf((canal ? of(canal) : plan)?.rationales ?? [], path, value),
    rowsOf: ({ rationale }) => plan.rows_used.filter((row) => rationale.rows.includes(row.key)),
    show,
  }
  const canal = asked && of(asked.canal)
  return (
    <Plain.Provider value={reasons}>
      {children}
      {asked && (
        <Sheet title={words.rationale.title(asked.canal, asked.title)} onClose={() => show(undefined)}>
          <p class="sheet-value number">{asked.value}</p>
          {asked.reasons.map((reason) => (
            <Reason key={reason.rationale.of} of={reason} rows={reasons.rowsOf(reason)}>
              {canal && <Beside canal={canal} of={reason.rationale.of} />}
            </Reason>
          ))}
          <details>
            <summary>{words.rationale.everything(plan.rows_used.length)}</summary>
            <RestsOn plan={plan} />
          </details>
        </Sheet>
      )}
    </Plain.Provider>
  )
}

/** That numbers can be touched, and what their mark means; nothing where the plan gives no reasons. */
export function TouchHint() {
  const reasons = useContext(Plain)
  if (!reasons?.anyGiven) return null
  return (
    <p class="touch-hint small soft not-on-paper">
      <span>{words.rationale.touch}</span>
      <span>
        <CheckMark /> {words.rationale.legend}
      </span>
    </p>
  )
}

interface Props {
  /** None where the number is the tooth's. */
  canal?: string | undefined
  /** The number's path in the canal's plan, `end_mm` or `strain.0.strain_pct`; several where it is a range. */
  of: string | readonly string[]
  /** What the number is of: `ends at`. */
  title: string
  /** The number as it is shown. */
  value: string
  /** How the number looks where it is not only its value. */
  children?: ComponentChildren
}

/**
 * A number that says in one touch why it is what it is; plain where the plan gives no reason. It stands anywhere below
 * a `WithReasons`: `<Why canal="MB" of="end_mm" title={words.rationale.end} value={mm(end_mm)} />`. Of a stop `of` is
 * what the stop table has as its `why`, or `stops.` and the target of the step; of the tooth's own numbers, as
 * `asks.sign_offs`, the canal is left out.
 */
export function Why({ canal, of, title, value, children }: Props) {
  const plan = useContext(Plain)
  const reasons = [of].flat().flatMap((path) => plan?.find(canal, path, value) ?? [])
  if (!plan || reasons.length === 0) return <span>{children ?? value}</span>
  const check = reasons.flatMap(plan.rowsOf).some((row) => row.know === 'from memory' && !row.programme)
  return (
    <button
      type="button"
      class="why"
      aria-haspopup="dialog"
      aria-label={words.rationale.ask(canal, title, value, check)}
      onClick={() => plan.show({ canal, title, value, reasons })}
    >
      <span class="marked">
        {children ?? value}
        {check && <CheckMark />}
      </span>
    </button>
  )
}
