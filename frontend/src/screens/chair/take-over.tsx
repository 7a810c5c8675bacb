import { useState } from 'preact/hooks'
import { Notice } from '@/parts/notice'
import { Sheet } from '@/parts/rationale/sheet'
import { useCase } from '@/store/cache/cases'
import type { Chair } from '@/store/chair/chair'
import { partIn } from '@/store/chair/part'
import { actorOf, lastOf } from '@/store/chair/visits'
import { words } from '@/words/en'

/** Who works the tooth, by name: the supervisor who took over, else its student. */
export function useWorker(chair: Chair): string {
  const student = useCase(chair.caseId).value?.student.name
  if (!chair.course.takenOver.by) return student || words.look.somebody
  const took = lastOf(chair, 'take_over')
  return (took && actorOf(chair, took)) || words.look.supervisor
}

/** Somebody has taken over: said to them, with the way back, and to the student. */
export function TakenOver({ chair }: { chair: Chair }) {
  const who = useWorker(chair)
  if (!chair.course.takenOver.by) return null
  if (partIn(chair.course) !== 'took_over') return <Notice sign="waiting">{words.look.otherWorks(who)}</Notice>
  const giveBack = () => void chair.record('', '', { kind: 'give_back' })
  return <Notice action={{ says: words.look.giveBack, onDo: giveBack }}>{words.look.youWork}</Notice>
}

/** Taking over takes two touches: it changes whose the record is. */
export function TakeOver({ chair }: { chair: Chair }) {
  const [open, setOpen] = useState(false)
  const who = useWorker(chair)
  const take = () => {
    setOpen(false)
    void chair.record('', '', { kind: 'take_over' })
  }
  return (
    <>
      <button type="button" class="button answer" onClick={() => setOpen(true)}>
        {words.look.takeOver}
      </button>
      {open && (
        <Sheet title={words.look.takeOverTitle} onClose={() => setOpen(false)}>
          <p>{words.look.takeOverWhy(who)}</p>
          <button type="button" class="button main" onClick={take}>
            {words.look.iTakeOver}
          </button>
        </Sheet>
      )}
    </>
  )
}
