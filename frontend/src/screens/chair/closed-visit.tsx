import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { mayTell } from '@/store/chair/part'
import { timeOf } from '@/store/chair/undo'
import { actorOf, lastOf } from '@/store/chair/visits'
import { CHECK } from '@/walk/visit'
import { words } from '@/words/en'
import { VisitSignOff } from './visit-sign-off'

/** A visit that was closed: what was left in the tooth, whether a supervisor has looked at it, and the way back in. */
export function ClosedVisit({ chair, caseId }: { chair: Chair; caseId: string }) {
  const closed = lastOf(chair, 'close')
  const at = closed && timeOf(chair, closed.id)
  const { dressing, temporary, access_sealed, note } = closed?.payload ?? {}
  return (
    <section class="now-card" aria-label={words.chair.kind.close}>
      <h2>{words.visit.closedAt(at === undefined ? '' : words.when(at))}</h2>
      <dl class="left-behind">
        <dt>{words.visit.dressing}</dt>
        <dd>{dressing ? words.visit.dressings[dressing] : words.visit.notSaid}</dd>
        <dt>{words.visit.temporary}</dt>
        <dd>{temporary ? words.visit.temporaries[temporary] : words.visit.notSaid}</dd>
      </dl>
      <Notice sign={access_sealed ? 'approved' : 'caution'}>
        {access_sealed ? words.visit.accessSealed : words.visit.accessOpen}
      </Notice>
      {note && <p>{note}</p>}
      {chair.course.visit.clinic && <Check chair={chair} since={closed ? chair.events.indexOf(closed) : 0} />}
      {mayTell(chair.course, 'reopen') && (
        <a class="button main" href={`/cases/${caseId}/chair/reopen`}>
          {words.visit.openAgain}
        </a>
      )}
    </section>
  )
}

/** The supervisor's sign-off of the closed visit. */
function Check({ chair, since }: { chair: Chair; since: number }) {
  const signOff = lastOf(chair, 'sign_off', (event) => event.node === CHECK && chair.events.indexOf(event) > since)
  const by = signOff && actorOf(chair, signOff)
  if (signOff && !chair.course.visit.checkDue) return <Notice sign="approved">{words.visit.checked(by ?? '')}</Notice>
  return (
    <>
      <Notice sign="waiting">{words.visit.checkDue}</Notice>
      {signOff && <Notice sign="returned">{words.visit.notYetGood(by ?? '', signOff.payload.reason ?? '')}</Notice>}
      <VisitSignOff chair={chair} node={CHECK} yes={words.visit.check} no={words.visit.checkNot} />
    </>
  )
}
