import { useEffect, useRef, useState } from 'preact/hooks'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import type { Chair } from '@/store/chair/chair'
import { planAgain } from '@/store/chair/chair'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { membership } from '@/store/session/session'
import type { CanalProgress } from '@/walk/course'
import { words } from '@/words/en'

/** A canal whose stops have to be worked out anew: the server does it as soon as it knows what was recorded. */
export function PlanAgain({ chair, course }: { chair: Chair; course: CanalProgress }) {
  const { version, treatment, waiting } = chair
  const id = useRef(uuid7())
  const [sending, run] = useSending(() => {
    id.current = uuid7()
  })
  const [asks, setAsks] = useState(false)
  const student = membership.value?.role === 'student'
  const known = waiting.length === 0
  const work = () =>
    run(async () => {
      const made = await planAgain(chair.caseId, id.current, version)
      id.current = uuid7()
      setAsks(made.state !== 'approved')
    })
  useEffect(() => {
    if (student && known && course.toPlan) void work()
  }, [student, known, course.toPlan, treatment.position])
  const plan = (
    <a class="button" href={`/cases/${chair.caseId}/plan`}>
      {words.lengthAgain.toPlan}
    </a>
  )
  if (!course.toPlan) return plan
  if (!student) return <Notice sign="waiting">{words.lengthAgain.byOther}</Notice>
  if (!known) return <Notice sign="note">{words.lengthAgain.notSent}</Notice>
  return (
    <div class="stack">
      {sending.state === 'busy' && <Notice sign="waiting">{words.lengthAgain.working}</Notice>}
      {asks && <Notice sign="waiting">{words.lengthAgain.asks}</Notice>}
      <Sent sending={sending} fields={[]} again={() => void work()} />
      {asks || sending.state === 'refused' ? (
        plan
      ) : (
        <button type="button" class="button main" disabled={sending.state === 'busy'} onClick={() => void work()}>
          {words.lengthAgain.again}
        </button>
      )}
    </div>
  )
}
