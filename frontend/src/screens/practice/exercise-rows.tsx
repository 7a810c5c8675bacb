import type { ExerciseListed, PracticeShown } from '@/api/shapes'
import { words } from '@/words/en'
import '@/parts/list.css'

interface Props {
  of: readonly ExerciseListed[]
  levels: PracticeShown['levels']
  /** Whose each is; not where all are one's own. */
  named?: boolean
}

/** Exercises, the newest first, each with its points. */
export function ExerciseRows({ of, levels, named = false }: Props) {
  if (of.length === 0) return <p class="soft">{words.practice.none}</p>
  return (
    <ul class="ledger">
      {of.map((row) => (
        <li key={row.id}>
          <a class="entry" href={`/practice/${row.id}`}>
            <span class="grow stack close">
              <span class="strong">{levels.find((level) => level.key === row.level)?.name ?? row.level}</span>
              <span class="small soft">
                {[named && row.student.name, words.when(row.created_at)].filter(Boolean).join(', ')}
              </span>
            </span>
            <span>{said(row)}</span>
          </a>
        </li>
      ))}
    </ul>
  )
}

function said({ score, ended_at }: ExerciseListed): string {
  if (score) return words.practice.points(score.points)
  return ended_at === null ? words.practice.goesOn : words.practice.endedEarly
}
