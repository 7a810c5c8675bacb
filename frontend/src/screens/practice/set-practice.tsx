import { useState } from 'preact/hooks'
import type { PracticeShown, PracticeTask } from '@/api/shapes'
import { Select } from '@/parts/fields'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { Sent } from '@/parts/sent'
import { setTask, useExercises, useGroups, usePractice, usePracticeTasks, withdrawTask } from '@/store/cache/practice'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import { ExerciseRows } from './exercise-rows'

/** For a supervisor: a level set as a task for a group, how far each task is, and the students' exercises in one list. */
export function SetPractice() {
  const practice = usePractice()
  const exercises = useExercises()
  return (
    <Page title={words.practice.title} back={{ to: '/worklist', says: words.worklist.title }}>
      <Seen of={practice}>
        {({ levels }) => (
          <>
            <NewTask levels={levels} />
            <Tasks levels={levels} />
            <section class="stack close">
              <h2>{words.practice.exercisesOfAll}</h2>
              <Seen of={exercises}>{({ results }) => <ExerciseRows of={results} levels={levels} named />}</Seen>
            </section>
          </>
        )}
      </Seen>
    </Page>
  )
}

interface OfLevels {
  levels: PracticeShown['levels']
}

function NewTask({ levels }: OfLevels) {
  const groups = useGroups().value ?? []
  const [level, setLevel] = useState(levels[0]?.key ?? '')
  const [group, setGroup] = useState('')
  const [id, setId] = useState(uuid7)
  const [sending, run] = useSending(() => setId(uuid7()))
  const submit = (event: Event) => {
    event.preventDefault()
    void run(() => setTask({ id, level, group }).then(() => setId(uuid7())))
  }
  return (
    <form class="card stack" onSubmit={submit}>
      <Select
        label={words.practice.level}
        options={levels.map(({ key, name }) => ({ value: key, says: name }))}
        value={level}
        onChoose={setLevel}
      />
      <Select
        label={words.practice.group}
        options={[{ value: '', says: words.practice.all }, ...groups.map((each) => ({ value: each, says: each }))]}
        value={group}
        onChoose={setGroup}
      />
      <Sent sending={sending} />
      <button type="submit" class="button answer" disabled={sending.state === 'busy'}>
        {words.practice.set}
      </button>
    </form>
  )
}

function Tasks({ levels }: OfLevels) {
  const tasks = usePracticeTasks()
  return (
    <section class="stack close">
      <h2>{words.practice.tasksSet}</h2>
      <Seen of={tasks} rows={1}>
        {({ results }) =>
          results.length === 0 ? (
            <p class="soft">{words.practice.none}</p>
          ) : (
            <ul class="ledger">
              {results.map((task) => (
                <OneTask key={task.id} of={task} levels={levels} />
              ))}
            </ul>
          )
        }
      </Seen>
    </section>
  )
}

function OneTask({ of, levels }: OfLevels & { of: PracticeTask }) {
  const [sending, run] = useSending()
  const name = levels.find((level) => level.key === of.level)?.name ?? of.level
  const { withdraw, withdrawn, all, done } = words.practice
  return (
    <li class="row wrap">
      <span class="grow stack close">
        <span class="strong">{`${name}, ${of.group || all}`}</span>
        <span class="small soft">{done(of.ended, of.begun)}</span>
        <Sent sending={sending} />
      </span>
      {of.withdrawn_at ? (
        <span class="small">{withdrawn}</span>
      ) : (
        <button
          type="button"
          class="button plain"
          disabled={sending.state === 'busy'}
          onClick={() => void run(() => withdrawTask(of.id))}
        >
          {withdraw}
        </button>
      )}
    </li>
  )
}
