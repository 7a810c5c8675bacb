import type { RationaleInput, RowUsed } from '@/api/shapes'
import { words } from '@/words/en'
import { figureOf } from '@/words/rationale'
import type { Reasoned } from './paths'
import { Rows } from './rows'

interface Props {
  of: Reasoned
  /** The figures it rests on. */
  rows: readonly RowUsed[]
  /** What else it rests on. */
  children?: preact.ComponentChildren
}

/** Why a number is what it is: a sentence, the arithmetic on one line, and folded where both come from. */
export function Reason({ of: { rationale, line }, rows, children }: Props) {
  const sum = line && words.rationale.line(line)
  return (
    <>
      <p>{rationale.rule}</p>
      {sum && <p class="number sum">{sum}</p>}
      <details>
        <summary>{words.rationale.source}</summary>
        <div class="stack close">
          {children}
          <Inputs of={line?.inputs ?? rationale.inputs} />
          {rows.length > 0 && <Rows rows={rows} />}
        </div>
      </details>
    </>
  )
}

function Inputs({ of }: { of: readonly RationaleInput[] }) {
  return (
    <dl class="inputs">
      {of.map(({ name, value, unit }) => (
        <>
          <dt>{name}</dt>
          <dd class="number">{figureOf(value, unit)}</dd>
        </>
      ))}
    </dl>
  )
}
