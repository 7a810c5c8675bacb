import { useState } from 'preact/hooks'
import type { ExerciseListed, NewExercise, PracticeShown } from '@/api/shapes'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { Sent } from '@/parts/sent'
import { go } from '@/router'
import { beginExercise, useExercises, usePractice, usePracticeTasks } from '@/store/cache/practice'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { ExerciseRows } from './exercise-rows'
import { SetPractice } from './set-practice'
import './practice.css'

/** What can be practised: ready with one tap. A supervisor sees the students' exercises, and sets tasks. */
export function Practice() {
  return membership.value?.role === 'student' ? <OfStudent /> : <SetPractice />
}

type Begin = (body: NewExercise) => void

function OfStudent() {
  const practice = usePractice()
  const exercises = useExercises()
  const [sending, run] = useSending()
  // Sent again with the same id is harmless; another exercise has an id of its own.
  const [ids] = useState(() => new Map<string, string>())
  const begin: Begin = (body) => {
    const of = JSON.stringify(body)
    const id = ids.get(of) ?? uuid7()
    ids.set(of, id)
    void run(async () => go(`/practice/${await beginExercise({ id, ...body })}`))
  }
  const busy = sending.state === 'busy'
  return (
    <Page
      title={words.practice.title}
      back={{ to: '/cases', says: words.cases.title }}
      foot={practice.value && <Foot of={practice.value} busy={busy} begin={begin} />}
    >
      <Sent sending={sending} />
      <Seen of={practice}>
        {(of) => (
          <>
            {of.points === null ? (
              <p>{words.practice.about}</p>
            ) : (
              <Points of={of.points} in={exercises.value?.results} />
            )}
            <Tasks of={of} busy={busy} begin={begin} />
            <section class="stack close">
              <h2>{words.practice.levels}</h2>
              {of.levels.map((level) => (
                <button
                  key={level.key}
                  type="button"
                  class="button"
                  disabled={busy}
                  onClick={() => begin({ level: level.key })}
                >
                  {level.name}
                </button>
              ))}
            </section>
            <section class="stack close">
              <h2>{words.practice.exercises}</h2>
              <ExerciseRows of={exercises.value?.results ?? []} levels={of.levels} />
            </section>
          </>
        )}
      </Seen>
    </Page>
  )
}

function Foot({ of, busy, begin }: { of: PracticeShown; busy: boolean; begin: Begin }) {
  if (of.unended_id !== null)
    return (
      <a class="button main" href={`/practice/${of.unended_id}`}>
        {words.practice.goOn}
      </a>
    )
  const name = of.levels.find((level) => level.key === of.proposed)?.name ?? ''
  return (
    <button type="button" class="button main" disabled={busy} onClick={() => begin({})}>
      {words.practice.begin(name)}
    </button>
  )
}

const LINE = { width: 280, height: 56 }

/** The mean as one number, and the points of the newest exercises as a line, the oldest of them first. */
function Points({ of, in: listed = [] }: { of: number; in?: readonly ExerciseListed[] | undefined }) {
  const points = listed.flatMap(({ score }) => (score ? [score.points] : [])).reverse()
  const x = (i: number) => 4 + (i * (LINE.width - 8)) / Math.max(1, points.length - 1)
  const y = (value: number) => 4 + ((100 - value) * (LINE.height - 8)) / 100
  return (
    <section class="card stack close">
      <h2>{words.practice.points(of)}</h2>
      <p class="small soft">{words.practice.mean}</p>
      {points.length > 1 && (
        <svg {...LINE} role="img" aria-label={words.practice.overTime(points.join(', '))}>
          <polyline class="points-line" points={points.map((each, i) => `${x(i)},${y(each)}`).join(' ')} />
        </svg>
      )}
    </section>
  )
}

/** Tasks of the student's group that are not begun yet. */
function Tasks({ of, busy, begin }: { of: PracticeShown; busy: boolean; begin: Begin }) {
  const open = usePracticeTasks().value?.results.filter(({ exercise_id }) => exercise_id === null) ?? []
  if (open.length === 0) return null
  return (
    <section class="stack close">
      <h2>{words.practice.tasks}</h2>
      {open.map((task) => (
        <div key={task.id} class="card stack close">
          <span class="small soft">{words.practice.setBy(task.set_by.name, words.when(task.created_at))}</span>
          <button type="button" class="button" disabled={busy} onClick={() => begin({ task_id: task.id })}>
            {words.practice.begin(of.levels.find((level) => level.key === task.level)?.name ?? task.level)}
          </button>
        </div>
      ))}
    </section>
  )
}
