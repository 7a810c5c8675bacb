import { answerTo, http, LISTED, NAMED, ofProgramme, tag } from './client'
import type * as S from './shapes'

const seen = (exercise_id: string, revision: number) => ({
  params: { path: { exercise_id }, header: { 'If-Match': tag(revision) } },
})
const EXERCISE = { ...NAMED, canals: 'list', done: 'list', revision: 'number' } as const

export const getPractice = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/practice', ofProgramme(programme)), { levels: 'list' })

export const listExercises = (programme_id: string, query: { student_id?: string; task_id?: string }) =>
  answerTo(
    http.GET('/api/v1/programmes/{programme_id}/practice-exercises', { params: { path: { programme_id }, query } }),
    LISTED,
  )

export const beginExercise = (programme: string, body: S.NewExercise) =>
  answerTo(
    http.POST('/api/v1/programmes/{programme_id}/practice-exercises', { ...ofProgramme(programme), body }),
    EXERCISE,
  )

export const getExercise = (exercise_id: string) =>
  answerTo(http.GET('/api/v1/practice-exercises/{exercise_id}', { params: { path: { exercise_id } } }), EXERCISE)

export const actIn = (id: string, revision: number, body: S.NewAct) =>
  answerTo(http.POST('/api/v1/practice-exercises/{exercise_id}/acts', { ...seen(id, revision), body }), {
    done: 'object',
    revision: 'number',
  })

export const endExercise = (id: string, revision: number) =>
  answerTo(http.POST('/api/v1/practice-exercises/{exercise_id}/end', seen(id, revision)), EXERCISE)

export const listTasks = (programme: string) =>
  answerTo(http.GET('/api/v1/programmes/{programme_id}/practice-tasks', ofProgramme(programme)), LISTED)

export const setTask = (programme: string, body: S.NewTask) =>
  answerTo(http.POST('/api/v1/programmes/{programme_id}/practice-tasks', { ...ofProgramme(programme), body }), NAMED)

export const withdrawTask = (programme_id: string, task_id: string) =>
  answerTo(
    http.POST('/api/v1/programmes/{programme_id}/practice-tasks/{task_id}/withdraw', {
      params: { path: { programme_id, task_id } },
    }),
    NAMED,
  )

export const listStudents = (programme_id: string) =>
  answerTo(
    http.GET('/api/v1/programmes/{programme_id}/people', {
      params: { path: { programme_id }, query: { role: 'student', limit: 100 } },
    }),
    LISTED,
  )
