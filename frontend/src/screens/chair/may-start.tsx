import type { ComponentChildren } from 'preact'
import type { CanalPlan, EventPayload, PersonRef, Prerequisite } from '@/api/shapes'
import { InTheRoom } from '@/panels/in-the-room'
import { Notice } from '@/parts/notice'
import { StepAnswers } from '@/parts/step-answers'
import type { Chair } from '@/store/chair/chair'
import { actorOf, lastOf, useNamedFor, useSupervisors } from '@/store/chair/visits'
import { mm } from '@/units/millimetres'
import { workHasBegun } from '@/walk/registry'
import { RENEW } from '@/walk/visit'
import { words } from '@/words/en'
import { VisitSignOff } from './visit-sign-off'

/** May I start? One line of what is there and what is missing; what is missing can be told right under it. */
export function MayStart({ chair, canal }: { chair: Chair; canal: CanalPlan | undefined }) {
  const { missing, visit } = chair.course
  const supervisors = useSupervisors()
  const line = <Line chair={chair} canal={canal} supervisors={supervisors} />
  // On the bench nothing of it changes any more once work has begun.
  if (missing.length === 0 && !visit.clinic) return !workHasBegun(chair.events) ? <p class="may-start">{line}</p> : null
  if (missing.length === 0) return <Room chair={chair} line={line} supervisors={supervisors} />
  return (
    <section class="may-start stack" data-missing aria-label={words.visit.mayStart}>
      <p>{line}</p>
      {missing.includes('dam_off') && (
        <>
          {visit.dam !== null && <Notice sign="stop">{words.visit.damStops}</Notice>}
          <button type="button" class="button main" onClick={() => say(chair, { kind: 'dam', state: 'on' })}>
            {visit.dam === null ? words.visit.damOn : words.visit.damOnAgain}
          </button>
        </>
      )}
      {missing.includes('nobody_on_site') && (
        <InTheRoom
          supervisors={supervisors}
          now=""
          onName={(supervisor_id) => say(chair, { kind: 'on_site', supervisor_id })}
        />
      )}
      {missing.includes('approval_lapsed') && <Lapsed chair={chair} />}
      {missing.includes('revoked') && <Revoked chair={chair} />}
    </section>
  )
}

/** Who withdrew the approval and why, and the way to the plan that has to be asked for again. */
export function Revoked({ chair }: { chair: Chair }) {
  const by = chair.events.find((event) => event.id === chair.course.revokedBy)
  if (by?.kind !== 'revoked') return null
  return (
    <>
      <Notice sign="stop">{words.visit.revoked(actorOf(chair, by), ended(by.payload.reason))}</Notice>
      <a class="button answer" href={`/cases/${chair.caseId}/plan`}>
        {words.visit.lookAtPlan}
      </a>
    </>
  )
}

const ended = (said: string) => (/[.!?]$/.test(said) ? said : `${said}.`)

function say(chair: Chair, payload: EventPayload): void {
  void chair.record('', '', payload)
}

interface RoomProps {
  chair: Chair
  line: ComponentChildren
  supervisors: readonly PersonRef[] | undefined
}

/** All is there; under the line what may change in the middle of a visit. */
function Room({ chair, line, supervisors }: RoomProps) {
  const named = useNamedFor(chair.caseId)
  return (
    <details class="may-start" aria-label={words.visit.mayStart}>
      <summary>{line}</summary>
      <div class="stack">
        {named && named.id !== chair.course.visit.onSite && <p>{words.visit.away(named.name)}</p>}
        <StepAnswers also="two">
          <button type="button" class="button" onClick={() => say(chair, { kind: 'dam', state: 'off' })}>
            {words.visit.damOff}
          </button>
          <button type="button" class="button" onClick={() => say(chair, { kind: 'dam', state: 'leaking' })}>
            {words.visit.damLeaking}
          </button>
        </StepAnswers>
        <InTheRoom
          supervisors={supervisors}
          now={chair.course.visit.onSite}
          onName={(supervisor_id) => say(chair, { kind: 'on_site', supervisor_id })}
        />
      </div>
    </details>
  )
}

interface LineProps {
  chair: Chair
  canal: CanalPlan | undefined
  supervisors: readonly PersonRef[] | undefined
}

/** The answer, what is missing, and what is there. */
function Line({ chair, canal, supervisors }: LineProps) {
  const { missing, visit } = chair.course
  const room = supervisors?.find((supervisor) => supervisor.id === visit.onSite)?.name ?? words.visit.somebody
  const withheld = canal && withheldSays(chair, canal.canal)
  const absent = [...missing.map((what) => saysOf(chair, what)), ...(withheld ? [withheld] : [])]
  const there = [
    visit.clinic && visit.onSite && words.visit.inRoom(room),
    visit.clinic && visit.dam === 'on' && words.visit.dam.on,
    !missing.includes('approval_lapsed') && !missing.includes('revoked') && words.visit.approved,
    // A settled length stands on the card of the step.
    canal && canal.length.state !== 'settled' && lengthOf(canal),
  ].filter((said) => typeof said === 'string' && said !== '')
  return (
    <>
      <b>{words.visit.mayStart}</b>{' '}
      <b class="may-start-answer" data-missing={absent.length > 0 || undefined}>
        {absent.length > 0 ? words.visit.notYet(absent.join(', ')) : words.visit.yes}
      </b>{' '}
      <span class="block small soft">{there.join(' · ')}</span>
    </>
  )
}

/** What keeps this canal closed although the visit is open, if anything does. */
function withheldSays({ course }: Chair, canal: string): string | undefined {
  const state = course.canals[canal]?.state
  if (state === undefined || state === 'open' || state === 'hold_point' || state === 'finished') return undefined
  return `${canal} ${words.chair.state[state]}`
}

/** What is missing before any canal is worked, in a few words. */
export function missingSays(chair: Chair): string {
  return chair.course.missing.map((what) => saysOf(chair, what)).join(', ')
}

function saysOf({ course }: Chair, what: Prerequisite): string {
  const { dam } = course.visit
  return what === 'dam_off' && dam ? words.visit.dam[dam] : words.visit.missing[what]
}

function lengthOf({ canal, length }: CanalPlan): string {
  const stop = length.stop_mm ?? length.estimate_mm
  return stop === null
    ? words.visit.noLength(canal)
    : words.visit.length(canal, mm(stop), words.lengthState(length.state))
}

/** A supervisor lets the approval count for this visit too, or says why not. */
export function Lapsed({ chair }: { chair: Chair }) {
  const signOff = lastOf(chair, 'sign_off', (event) => event.node === RENEW)
  const opened = lastOf(chair, 'reopen')
  const since = signOff && opened && chair.events.indexOf(signOff) > chair.events.indexOf(opened)
  return (
    <>
      <Notice sign="waiting">{words.visit.lapsed}</Notice>
      {since && (
        <Notice sign="returned">{words.visit.notRenewed(actorOf(chair, signOff), signOff.payload.reason ?? '')}</Notice>
      )}
      <VisitSignOff chair={chair} node={RENEW} yes={words.visit.renew} no={words.chair.giveBack} />
    </>
  )
}
