import type { ExerciseShown } from '@/api/shapes'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { Sent } from '@/parts/sent'
import { endExercise, useExercise } from '@/store/cache/practice'
import { useSending } from '@/store/forms/sending'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { LastAct } from './last-act'
import { Revealed } from './revealed'
import { StepToDo } from './step-to-do'

const BACK = { to: '/practice', says: words.practice.title }

/** One exercise: the step that is due, or once it is ended the canal as it was. */
export function Exercise({ id }: { id: string }) {
  const kept = useExercise(id)
  const of = kept.value
  const notices = <Seen of={kept}>{() => null}</Seen>
  if (!of)
    return (
      <Page title={words.practice.title} back={BACK}>
        {notices}
      </Page>
    )
  if (of.ended_at) return <Revealed of={of} back={BACK} />
  if (membership.value?.role !== 'student') return <LookingIn of={of} />
  if (!of.due)
    return (
      <Worked of={of} back={BACK}>
        {notices}
      </Worked>
    )
  return (
    <StepToDo key={of.revision} of={of} due={of.due} back={BACK}>
      {notices}
    </StepToDo>
  )
}

interface WorkedProps {
  of: ExerciseShown
  back: { to: string; says: string }
  children: preact.ComponentChildren
}

function Worked({ of, back, children }: WorkedProps) {
  const [sending, run] = useSending()
  const see = () => void run(() => endExercise(of))
  return (
    <Page
      title={words.practice.title}
      back={back}
      foot={
        <button type="button" class="button main" disabled={sending.state === 'busy'} onClick={see}>
          {words.practice.see}
        </button>
      }
    >
      {children}
      <LastAct of={of} />
      <p>{words.practice.allWorked}</p>
      <Sent sending={sending} again={see} />
    </Page>
  )
}

/** What a supervisor sees of an exercise that goes on. */
function LookingIn({ of }: { of: ExerciseShown }) {
  return (
    <Page title={of.student.name} under={words.practice.goesOn} back={BACK}>
      <LastAct of={of} />
    </Page>
  )
}
