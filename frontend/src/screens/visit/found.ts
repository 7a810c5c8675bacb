import type { CanalPlan, EventPayload, Found } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import { workedIn } from '@/store/chair/visits'
import { own } from '@/walk/own'

export type YesNo = 'yes' | 'no'

/** What was answered so far, before the visit is open again. Nothing is answered beforehand. */
export interface Answers {
  supervisor_id: string
  protected: boolean
  /** By reference point: canals that share one have one answer. */
  there: Readonly<Record<string, YesNo>>
  newPoint: Readonly<Record<string, string>>
  /** By canal. */
  small: Readonly<Record<string, YesNo>>
  length: Readonly<Record<string, YesNo>>
}

export const empty = (): Answers => ({
  supervisor_id: '',
  protected: false,
  there: {},
  newPoint: {},
  small: {},
  length: {},
})

/** The canals that have something to find again: a finished one has not. */
export function toFind(chair: Chair): CanalPlan[] {
  return chair.plan.canals.filter(({ canal }) => (chair.course.canals[canal]?.state ?? 'finished') !== 'finished')
}

/** Canals by the reference point they are measured from. */
export function byPoint(canals: readonly CanalPlan[]): Map<string, string[]> {
  const names = new Map<string, string[]>()
  for (const { canal, reference_point } of canals) {
    names.set(reference_point, [...(names.get(reference_point) ?? []), canal])
  }
  return names
}

function pointNamed(point: string, { there, newPoint }: Answers): boolean {
  const named = (newPoint[point] ?? '').trim()
  return there[point] === 'yes' || (there[point] === 'no' && named !== '' && named !== point)
}

/** Whether a canal whose reference point has gone is asked the rest: its length is taken anew anyway. */
export const asksFurther = (canal: CanalPlan, { there }: Answers) => there[canal.reference_point] === 'yes'

/** What is told of every canal, or undefined while a question is open. */
export function foundOf(chair: Chair, answers: Answers): Found[] | undefined {
  const checks: Found[] = []
  for (const canal of toFind(chair)) {
    const { canal: name, reference_point: point } = canal
    if (!pointNamed(point, answers)) return undefined
    if (!asksFurther(canal, answers)) {
      checks.push({ canal: name, reference_there: false, reference_point: (answers.newPoint[point] ?? '').trim() })
    } else if (!workedIn(chair, canal)) checks.push({ canal: name, reference_there: true })
    else {
      const small = own(answers.small, name)
      const length = own(answers.length, name)
      if (!small || !length) return undefined
      checks.push({
        canal: name,
        reference_there: true,
        small_as_deep: small === 'yes',
        length_agrees: length === 'yes',
      })
    }
  }
  return checks
}

const asLeft = (canal: Found) => canal.reference_there && canal.small_as_deep !== false && canal.length_agrees !== false

/** Canals by what follows from how they were found. */
export function followsFrom(checks: readonly Found[]): { toCheck: string[]; toPlan: string[] } {
  return {
    toCheck: checks.filter((canal) => canal.reference_there && !asLeft(canal)).map(({ canal }) => canal),
    toPlan: checks.filter((canal) => !canal.reference_there).map(({ canal }) => canal),
  }
}

export function reopening(answers: Answers, checks: Found[]): EventPayload {
  return {
    kind: 'reopen',
    as_left: checks.filter(asLeft).map(({ canal }) => canal),
    protected: answers.protected,
    supervisor_id: answers.supervisor_id,
    found: checks,
  }
}
