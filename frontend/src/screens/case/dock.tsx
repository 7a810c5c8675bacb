import type { CanalShown, CaseShown, Length } from '@/api/shapes'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'

const NEXT: readonly Length['state'][] = ['missing', 'unsettled', 'to_settle', 'estimated', 'settled']

/** The canal that has most need of a reading. */
export function dueOf(of: CaseShown): CanalShown | undefined {
  const pending = pendingReadingsOf(of.id).value
  const rank = ({ id, length, length_problem }: CanalShown) => {
    const waits = pending.some((reading) => reading.canal === id)
    return NEXT.indexOf(waits ? 'estimated' : (length?.state ?? (length_problem ? 'unsettled' : 'missing')))
  }
  return of.canals.toSorted((a, b) => rank(a) - rank(b))[0]
}

/** Once every canal has a reading that was not struck the tooth is planned. */
export const everyMeasured = ({ canals }: CaseShown): boolean =>
  canals.length > 0 && canals.every(({ readings }) => readings.some(({ struck }) => !struck))

interface Props {
  of: CaseShown
  canal: CanalShown
  works: boolean
  onMeasure: () => void
}

/** As long as lengths are shown: measuring is due, or the way to the plan. */
export function Dock({ of, canal, works, onMeasure }: Props) {
  const student = membership.value?.role === 'student'
  const measured = everyMeasured(of)
  const due = works && !measured
  // A case is planned by its student; others read the version that stands.
  const plan = student ? `/cases/${of.id}${measured || of.version ? '' : '/plan'}` : `/plans/${of.version?.id}`
  return (
    <div class="case-dock">
      {due || <Measure of={of} canal={canal} works={works} onMeasure={onMeasure} />}
      {!student && <ToTheChair of={of} />}
      {(student || of.version) && (
        <a class={due ? 'button answer' : 'button main'} href={plan}>
          {of.version ? words.chart.planSee : words.chart.planNew}
        </a>
      )}
      {due && <Measure of={of} canal={canal} works={works} onMeasure={onMeasure} due />}
    </div>
  )
}

/** Beside asking for the plan; once that is settled the work is due. */
export function Beside({ settled, ...props }: Props & { settled: boolean }) {
  return (
    <>
      <Measure {...props} />
      <ToTheChair of={props.of} due={settled} />
    </>
  )
}

function Measure({ canal, works, onMeasure, due = false }: Props & { due?: boolean }) {
  if (!works) return null
  return (
    <button type="button" class={due ? 'button main' : 'button answer'} onClick={onMeasure}>
      {words.measure.openOne(canal.name)}
    </button>
  )
}

function ToTheChair({ of, due = false }: { of: CaseShown; due?: boolean }) {
  if (of.status.approved_number === null) return null
  return (
    <a class={due ? 'button main' : 'button answer'} href={`/cases/${of.id}/chair`}>
      {words.chair.open}
    </a>
  )
}
