import { type ComponentChildren, createContext } from 'preact'
import { useContext, useState } from 'preact/hooks'
import type { Plan, Rationale, RowUsed } from '@/api/shapes'
import { CheckMark } from '@/parts/known'
import { words } from '@/words/en'
import { figureOf } from '@/words/rationale'
import { pathsOf } from './paths'
import { Rows } from './rows'
import { Sheet } from './sheet'

interface Question {
  readonly title: string
  readonly value: string
  readonly rationale: readonly Rationale[]
}

interface Reasons {
  readonly anyGiven: boolean
  /** Why a number of a canal is what it is; nothing where the plan does not say. */
  find(canal: string, of: string): Rationale | undefined
  rowsOf(rationale: Rationale): RowUsed[]
  show(asked: Question): void
}

const Plain = createContext<Reasons | undefined>(undefined)

/** Where the plan gives reasons: how to find them. */
export const useReasons = () => useContext(Plain)

/** Lets every number inside be touched to see why: the rule, what went in, and the figures it rests on. */
export function WithReasons({ plan, children }: { plan: Plan; children: ComponentChildren }) {
  const [asked, show] = useState<Question>()
  const rowsOf = (rationale: Rationale) => plan.rows_used.filter((row) => rationale.rows.includes(row.key))
  const anyGiven = plan.canals.some((c) => c.rationales.length > 0)
  const find = (canal: string, of: string) => {
    const why = plan.canals.find((c) => c.canal === canal)?.rationales
    const path = pathsOf(of).find((path) => why?.some((rationale) => rationale.of === path))
    return why?.find((rationale) => rationale.of === path)
  }
  return (
    <Plain.Provider value={{ anyGiven, find, rowsOf, show }}>
      {children}
      {asked && (
        <Sheet title={asked.title} onClose={() => show(undefined)}>
          <p class="sheet-value number">{asked.value}</p>
          {asked.rationale.map((rationale) => (
            <Reason key={rationale.of} rationale={rationale} rows={rowsOf(rationale)} />
          ))}
        </Sheet>
      )}
    </Plain.Provider>
  )
}

interface ReasonProps {
  rationale: Rationale
  rows: readonly RowUsed[]
}

/** The rule, what went in, and the figures it rests on. */
export function Reason({ rationale, rows }: ReasonProps) {
  return (
    <>
      <p>{rationale.rule}</p>
      {rationale.inputs.length > 0 && (
        <section class="stack close">
          <h3>{words.rationale.inputs}</h3>
          <dl class="inputs">
            {rationale.inputs.map(({ name, value, unit }) => (
              <>
                <dt>{name}</dt>
                <dd class="number">{figureOf(value, unit)}</dd>
              </>
            ))}
          </dl>
        </section>
      )}
      {rows.length > 0 && (
        <section class="stack close">
          <h3>{words.rationale.rows}</h3>
          <Rows rows={rows} />
        </section>
      )}
    </>
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

interface TappedProps {
  canal: string
  /** The number's path in the canal's plan; several where it is a range. */
  of: string | readonly string[]
  title: string
  value: string
  /** How the number looks where it is not only its value. */
  children?: ComponentChildren
}

/** A number that can be touched to see why; plain where the plan gives no reason. */
export function Tapped({ canal, of, title, value, children }: TappedProps) {
  const reasons = useContext(Plain)
  const rationale = [of].flat().flatMap((path) => reasons?.find(canal, path) ?? [])
  if (!reasons || rationale.length === 0) return <span>{children ?? value}</span>
  const check = rationale.flatMap(reasons.rowsOf).some((row) => row.know === 'from memory' && !row.programme)
  const open = () => reasons.show({ title: words.rationale.title(canal, title), value, rationale })
  return (
    <button
      type="button"
      class="tapped"
      aria-haspopup="dialog"
      aria-label={words.rationale.ask(canal, title, value, check)}
      onClick={open}
    >
      <span class="marked">
        {children ?? value}
        {check && <CheckMark />}
      </span>
    </button>
  )
}
