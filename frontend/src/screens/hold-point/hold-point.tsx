import type { CanalPlan, CaseShown, SheetStep, Treatment } from '@/api/shapes'
import { Answer } from '@/panels/hold-point/answer'
import { Answered } from '@/panels/hold-point/answered'
import { ImagesOf } from '@/panels/images/images-of'
import { byWeight, Cautions } from '@/parts/cautions'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { Sign } from '@/parts/signs'
import { useCase } from '@/store/cache/cases'
import { usePolling } from '@/store/cache/hooks'
import { type Chair, useChair, useTreatment } from '@/store/chair/chair'
import { shownEvent, sinceLastSignOff } from '@/store/chair/hold'
import { imagesSince } from '@/store/chair/image-of-step'
import { lackingAt } from '@/store/chair/lacking'
import { mayTell } from '@/store/chair/part'
import { standingWith } from '@/store/chair/together'
import { words } from '@/words/en'
import { LengthFacts } from './length-facts'
import { Since } from './since'
import './hold-point.css'

const SECONDS_3 = 3000 // two supervisors may look at once: the second must soon see that the first has decided

/** What a supervisor decides on at a hold point of one canal, and their answer. */
export function HoldPointPage({ caseId, canal }: { caseId: string; canal: string }) {
  const of = useCase(caseId).value
  const treatment = useTreatment(caseId)
  usePolling(true, treatment, SECONDS_3)
  return (
    <Seen of={treatment} rows={5}>
      {(value) => <Loaded of={of} caseId={caseId} canal={canal} treatment={value} />}
    </Seen>
  )
}

interface Props {
  of: CaseShown | undefined
  caseId: string
  canal: string
}

function Loaded({ of, caseId, canal, treatment }: Props & { treatment: Treatment }) {
  const chair = useChair(caseId, treatment)
  const course = chair?.course.canals[canal]
  const node = course?.state === 'hold_point' ? (course.walk.node as SheetStep) : undefined
  const planned = chair?.plan.canals.find((candidate) => candidate.canal === canal)
  return (
    <Page
      title={words.hold.title(canal, node?.hold_point ?? '')}
      under={of && `${of.tooth.iso} · ${of.patient_alias} · ${of.student.name} · ${words.setting[of.setting]}`}
      back={{ to: '/worklist', says: words.back }}
      foot={chair && node && mayTell(chair.course, 'sign_off') && <Answer key={node.id} chair={chair} canal={canal} />}
      wide
    >
      {chair === null && <Notice>{words.chair.notApproved}</Notice>}
      {chair === undefined && <Notice>{words.chair.notHere}</Notice>}
      {chair && planned && <Facts chair={chair} canal={planned} waits={node !== undefined} />}
    </Page>
  )
}

function Facts({ chair, canal, waits }: { chair: Chair; canal: CanalPlan; waits: boolean }) {
  const cautions = byWeight(chair.plan.cautions.filter((caution) => caution.canal === canal.canal))
  return (
    <>
      <WaitingToo chair={chair} canal={canal.canal} />
      <Answered chair={chair} canal={canal.canal} waits={waits} />
      <div class="hold-facts">
        <div class="stack">
          {waits && <Asking chair={chair} canal={canal.canal} />}
          <LengthFacts canal={canal} />
          <Images chair={chair} canal={canal.canal} />
          {waits && <AnsweredWith chair={chair} canal={canal.canal} />}
        </div>
        <div class="stack">
          <Since chair={chair} canal={canal.canal} />
          {cautions.length > 0 && (
            <section class="stack close">
              <h2>{words.hold.cautions}</h2>
              <Cautions plan={{ ...chair.plan, cautions }} />
            </section>
          )}
        </div>
      </div>
    </>
  )
}

/** The other canals at the same point: what is judged of them stands on the same screen, the sign-off may hold for all. */
function AnsweredWith({ chair, canal }: { chair: Chair; canal: string }) {
  const [, ...others] = standingWith(chair, canal)
  return chair.plan.canals
    .filter((otherCanal) => others.includes(otherCanal.canal))
    .map((otherCanal) => (
      <section key={otherCanal.canal} class="card stack close">
        <h2>{otherCanal.canal}</h2>
        <LengthFacts canal={otherCanal} />
        <Images chair={chair} canal={otherCanal.canal} />
        <Since chair={chair} canal={otherCanal.canal} />
      </section>
    ))
}

function Asking({ chair, canal }: { chair: Chair; canal: string }) {
  const course = chair.course.canals[canal]
  const asking = shownEvent(chair, course?.asking ?? null)
  const coming = shownEvent(chair, course?.coming ?? null)
  return (
    <section class="card stack close asking">
      <p class="strong">
        <Sign name="waiting" />{' '}
        {asking ? words.hold.asks(asking.actor.name, words.when(asking.server_time)) : words.hold.notAsked}
      </p>
      {asking?.payload.kind === 'ask' && asking.payload.note && <p class="asked-note">{asking.payload.note}</p>}
      {coming && <p>{words.hold.comes(coming.actor.name)}</p>}
    </section>
  )
}

/** The other canals of the tooth that wait for a sign-off. */
function WaitingToo({ chair, canal }: { chair: Chair; canal: string }) {
  const others = Object.entries(chair.course.canals).filter(
    ([name, course]) => name !== canal && course.state === 'hold_point',
  )
  if (others.length === 0) return null
  return (
    <nav class="row wrap" aria-label={words.hold.others}>
      <span class="small soft">{words.hold.others}</span>
      {others.map(([name]) => (
        <a key={name} class="button" href={`/cases/${chair.version.case_id}/sign-off/${name}`}>
          {name}
        </a>
      ))}
    </nav>
  )
}

/** The images that were taken of the canal since the last sign-off on it, each opening larger. */
function Images({ chair, canal }: { chair: Chair; canal: string }) {
  const since = sinceLastSignOff(chair, canal)
  const ids = imagesSince(chair, canal)
  const step = since.findLast(
    ({ id, payload }) => payload.kind === 'step' && payload.no_image && !chair.course.undone.has(id),
  )
  const reason = step?.payload.kind === 'step' ? step.payload.no_image : undefined
  return (
    <section class="stack close" aria-label={words.hold.images}>
      <h2>{words.hold.images}</h2>
      {lackingAt(chair, canal).includes('image') ? (
        <Notice sign="caution">{words.hold.lackingSeen.image}</Notice>
      ) : (
        ids.length === 0 && <p class="soft">{reason ? words.hold.noImage[reason] : words.hold.noImages}</p>
      )}
      <ImagesOf caseId={chair.version.case_id} ids={ids} />
    </section>
  )
}
