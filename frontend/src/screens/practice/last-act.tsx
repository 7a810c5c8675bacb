import type { ActDone, ExerciseShown } from '@/api/shapes'
import { about, mm } from '@/units/millimetres'
import { words } from '@/words/en'

/** The name of an instrument as it is written, by its key. */
export function nameOf(of: ExerciseShown, key: string): string {
  const items = of.canals.flatMap((canal) => canal.instruments)
  return items.find(({ instrument }) => instrument.key === key)?.instrument.name ?? key
}

/** Where the last instrument rested against what was said and expected, and what went wrong, in one sentence each. */
export function LastAct({ of }: { of: ExerciseShown }) {
  const last = of.done.at(-1)
  if (!last) return null
  return (
    <output class="card stack close">
      <span class="strong">{rested(last, nameOf(of, last.instrument))}</span>
      {last.judged && <span class="small">{compared(last)}</span>}
      {last.mistakes.map((mistake) => (
        <span key={mistake.code}>{mistake.says}</span>
      ))}
    </output>
  )
}

function rested({ depth_mm, stop_mm }: ActDone, name: string): string {
  if (depth_mm === null) return words.practice.skipped(name)
  return depth_mm >= stop_mm ? words.practice.reached(name, mm(depth_mm)) : words.practice.rested(name, about(depth_mm))
}

function compared({ act, low_mm, high_mm }: ActDone): string {
  const parts: string[] = []
  if (low_mm !== null && high_mm !== null) parts.push(words.practice.expected(about(low_mm), about(high_mm)))
  if (act.predicted_mm !== null) parts.push(words.practice.said(about(act.predicted_mm)))
  return parts.join(', ')
}
