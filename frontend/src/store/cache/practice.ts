import * as calls from '@/api/practice'
import { Refused } from '@/api/problem'
import type * as S from '@/api/shapes'
import { membership } from '@/store/session/session'
import { refresh, replace } from './cached'
import { useCached } from './hooks'

const programme = () => membership.value?.programme.id ?? ''
const nameOf = (id: string) => `exercise ${id}`
const askPractice = () => calls.getPractice(programme())
const askTasks = () => calls.listTasks(programme())
const TASKS = 'practice tasks'

export const usePractice = () => useCached('practice', askPractice)
export const usePracticeTasks = () => useCached(TASKS, askTasks)
export const useExercise = (id: string) => useCached(nameOf(id), () => calls.getExercise(id))

/** The newest exercises: one's own, or for a supervisor those of all, of one student or of one task. */
export function useExercises(of: { student_id?: string; task_id?: string } = {}) {
  return useCached(`exercises ${JSON.stringify(of)}`, () => calls.listExercises(programme(), of))
}

/** Names of the groups that students are in; a supervisor's alone. */
export function useGroups() {
  return useCached('groups of students', async () => {
    const { results } = await calls.listStudents(programme())
    return [...new Set(results.map(({ group }) => group))].filter((group) => group !== '').sort()
  })
}

/** The id of an exercise that was begun. */
export async function beginExercise(body: S.NewExercise): Promise<string> {
  const begun = await calls.beginExercise(programme(), body)
  await replace(nameOf(begun.id), begun)
  return begun.id
}

/** Does one thing in the exercise as it was seen; where it went on at another device, that is shown instead. */
export async function actIn(of: S.ExerciseShown, body: S.NewAct): Promise<void> {
  const { done, due, revision } = await orAnew(of.id, calls.actIn(of.id, of.revision, body))
  await replace(nameOf(of.id), { ...of, due, revision, done: [...of.done, done] })
}

export async function endExercise(of: S.ExerciseShown): Promise<void> {
  await replace(nameOf(of.id), await orAnew(of.id, calls.endExercise(of.id, of.revision)))
}

async function orAnew<T>(id: string, call: Promise<T>): Promise<T> {
  return call.catch(async (error) => {
    if (error instanceof Refused && error.status === 412) await refresh(nameOf(id), () => calls.getExercise(id))
    throw error
  })
}

export async function setTask(body: S.NewTask): Promise<void> {
  await calls.setTask(programme(), body)
  await refresh(TASKS, askTasks)
}

export async function withdrawTask(id: string): Promise<void> {
  await calls.withdrawTask(programme(), id)
  await refresh(TASKS, askTasks)
}
