import { useEffect, useMemo, useState } from 'preact/hooks'
import type { CanalPlan, Treatment } from '@/api/shapes'
import { adviceIn } from '@/panels/emergency/at-hand'
import { EmergencyDoor } from '@/panels/emergency/emergency-door'
import { OLD_S } from '@/parts/as-of'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { RecordLink } from '@/parts/record-link'
import { Seen } from '@/parts/seen'
import { Unhurried } from '@/parts/unhurried'
import { useCase } from '@/store/cache/cases'
import { usePolling } from '@/store/cache/hooks'
import { usePlanSeen } from '@/store/cache/plan-seen'
import { type Chair as AtChair, useChair, useTreatment } from '@/store/chair/chair'
import { useExpectedRest } from '@/store/chair/expected'
import { works } from '@/store/chair/part'
import { stillComing } from '@/store/chair/together'
import { useKeepReady } from '@/store/outbox/ready'
import type { CanalProgress } from '@/walk/course'
import { TooNew } from '@/walk/walk'
import { words } from '@/words/en'
import { BandsBoard, LastDepth } from './bands'
import { NextAtTray, nextElsewhere } from './canals'
import { ClosedVisit } from './closed-visit'
import { ClosedDock, Dock } from './dock'
import { DoneList } from './done-list'
import { Ending, isOver } from './ending'
import { Halted, SalineOnly } from './halted'
import { WantedImages } from './image-answers'
import { IrrigateMore } from './irrigate'
import { LengthAgain } from './length-again'
import { LookingIn } from './looking-in'
import { MayStart } from './may-start'
import { NewPlan } from './new-plan'
import { Note } from './note'
import { AboutStep, NowCard } from './now-card'
import { Outbox } from './outbox'
import { PhoneSays } from './phone-says'
import { StepPicture } from './step-picture'
import { TakenOver } from './take-over'
import { useUnhurriedChair } from './unhurried-chair'
import './chair.css'
import './may-start.css'

/** What is asked: of a step what is to be done, else all of what stands in its way. */
const ASKED = '.now-what, .now-card:not(:has(.now-what)), .may-start[data-missing]'
const SECONDS_3 = 3000 // a supervisor's sign-off must reach the chair within five seconds

/** The work on a tooth, one step at a time; with no connection as with one. */
export function Chair({ id }: { id: string }) {
  const cached = useCase(id)
  const treatment = useTreatment(id)
  usePolling(true, treatment, SECONDS_3)
  const of = cached.value
  return (
    <Page
      title={words.chair.title(of?.tooth.iso ?? '')}
      under={of && `${of.patient_alias} · ${words.setting[of.setting]}`}
      back={{ to: `/cases/${id}`, says: words.back }}
      aside={<RecordLink caseId={id} />}
      wide
    >
      {treatment.value === undefined && <EmergencyDoor caseId={id} />}
      <Seen of={treatment} rows={5} old_s={OLD_S}>
        {(value) => <Work caseId={id} treatment={value} />}
      </Seen>
    </Page>
  )
}

function Work({ caseId, treatment }: { caseId: string; treatment: Treatment }) {
  useAwake()
  const plan = usePlanSeen(caseId, treatment.course?.plan_hash)
  try {
    const chair = useChair(caseId, treatment)
    if (chair === null) return <Notice sign="note">{words.chair.notApproved}</Notice>
    if (!chair && plan.older) return <NotHere caseId={caseId} sign="stop" says={words.newPlan.onItsWay} />
    if (!chair) return <NotHere caseId={caseId} sign="note" says={words.chair.notHere} />
    if (!plan.known) return null
    // Who looks in answers nothing; while the tooth is halted nobody does, and the plan is told once it goes on.
    if (plan.older && works(chair.course) && chair.course.haltedBy === null)
      return <NewPlan chair={chair} older={plan.older} onAcknowledge={plan.acknowledge} />
    return <AtTheChair caseId={caseId} chair={chair} />
  } catch (error) {
    if (error instanceof TooNew) return <NotHere caseId={caseId} sign="stop" says={words.chair.tooNew} />
    throw error
  }
}

/** The work cannot be shown; an emergency can be told all the same. */
function NotHere({ caseId, sign, says }: { caseId: string; sign: 'note' | 'stop'; says: string }) {
  return (
    <>
      <Notice sign={sign}>{says}</Notice>
      <EmergencyDoor caseId={caseId} />
    </>
  )
}

interface Props {
  caseId: string
  chair: AtChair
  canals: readonly CanalPlan[]
}

/** Who works the tooth is shown the next step; who looks in is told how it stands. */
function AtTheChair({ caseId, chair }: Omit<Props, 'canals'>) {
  useKeepReady(caseId, {
    planHash: chair.version.hash,
    position: chair.treatment.position,
    advice: adviceIn(chair),
  })
  const canals = useMemo(() => chair.plan.canals.filter((c) => chair.course.canals[c.canal]), [chair.plan])
  if (!works(chair.course)) return <LookingIn chair={chair} canals={canals} />
  return <Standing caseId={caseId} chair={chair} canals={canals} />
}

function Standing({ caseId, chair: hurried, canals }: Props) {
  const [picked, setPicked] = useState<string>()
  const current = picked ?? (hurried.course.turnedTo || canals[0]?.canal) ?? ''
  const [over, chair] = useUnhurriedChair(hurried, current)
  const ahead = useExpectedRest(caseId, chair)
  const canal = canals.find((c) => c.canal === current) ?? canals[0]
  const course = canal && chair.course.canals[canal.canal]
  // While the tooth is halted there is one thing to read and nothing to answer.
  const halted = chair.course.haltedBy !== null
  const { closed } = chair.course.visit
  const open = chair.course.missing.length === 0
  const isDone = isOver(chair)
  const step = course ? [canal?.canal, chair.course.plan, course.walk.at, course.walk.left.length].join(' ') : ''
  // Another step is read from its top, and lies clear of the dock.
  useEffect(() => {
    globalThis.scrollTo?.(0, 0)
    document.querySelector(ASKED)?.scrollIntoView?.({ block: 'nearest' })
  }, [step, course?.state, open])
  const [put, setPut] = useState<{ step: string; depth_um: number | undefined }>()
  // A depth is of the step that it was put at.
  const tip = {
    depth_um: put?.step === step ? put.depth_um : undefined,
    onDepth: (depth_um: number | undefined) => setPut({ step, depth_um }),
  }
  const next = canal && nextElsewhere(chair, canals, canal.canal)
  const goesOn = canal && course && goesOnElsewhere(chair, canal.canal, course)
  const turn = (name: string) => {
    setPicked(name)
    if (name !== current) void chair.record(name, '', { kind: 'turn' })
  }
  return (
    <Unhurried over={over} class="chair">
      {/* Not among what is due: it stays in sight wherever the screen stands. */}
      <PhoneSays caseId={caseId} />
      <div class="chair-due">
        {halted && <Halted chair={chair} />}
        <TakenOver chair={chair} />
        <SalineOnly chair={chair} />
        <WantedImages chair={chair} />
        <Outbox chair={chair} />
        {closed && <ClosedVisit chair={chair} caseId={caseId} />}
        {!closed && !halted && !open && <MayStart chair={chair} canal={canal} />}
        {canal && open && <LastDepth chair={chair} ahead={ahead} canal={canal} />}
        {isDone && !closed && !halted && <Ending chair={chair} canals={canals} />}
        {canal && course && open && !isDone && (
          <NowCard
            key={step}
            chair={chair}
            canal={canal}
            course={course}
            picture={<StepPicture {...{ chair, canals, canal, ahead }} tip={tip} onTurn={turn} />}
          >
            {next && !goesOn && <NextAtTray chair={chair} of={next} onTurn={turn} />}
          </NowCard>
        )}
      </div>
      {!closed && !halted && open && <MayStart chair={chair} canal={canal} />}
      {canal && course && open && (
        <>
          <AboutStep chair={chair} canal={canal} course={course} />
          <IrrigateMore chair={chair} canal={canal.canal} course={course} />
        </>
      )}
      {canal && course && open && !course.toPlan && (
        <LengthAgain key={canal.canal} chair={chair} canal={canal} course={course} />
      )}
      {canal && open && <BandsBoard chair={chair} ahead={ahead} canal={canal} />}
      <DoneList chair={chair} />
      <Note chair={chair} />
      {!closed && !isDone && (
        <a class="button close-for-today" href={`/cases/${caseId}/chair/close`}>
          {words.visit.close}
        </a>
      )}
      {canal && closed && !halted && <ClosedDock chair={chair} canal={canal} />}
      {canal && course && !halted && !closed && (
        <Dock
          key={step}
          chair={chair}
          canal={canal}
          course={course}
          tip={tip}
          onward={next && goesOn && <NextAtTray main chair={chair} of={next} onTurn={turn} />}
          onTurnedBack={() => setPicked(undefined)}
        />
      )}
    </Unhurried>
  )
}

/** Here nothing is to be done for now: another canal is what is due, and one sign-off serves all that come to this point. */
const goesOnElsewhere = (chair: AtChair, canal: string, { state, asking }: CanalProgress) =>
  state === 'finished' ||
  state === 'waits' ||
  (state === 'hold_point' && (asking !== null || stillComing(chair, canal).length > 0))

/** Keeps the screen on while it is looked at: a wet glove cannot unlock a phone. */
function useAwake() {
  useEffect(() => {
    let lock: { release(): Promise<void> } | undefined
    const ask = async () => {
      if (document.visibilityState === 'visible')
        lock = await navigator.wakeLock?.request('screen').catch(() => undefined)
    }
    void ask()
    document.addEventListener('visibilitychange', ask)
    return () => {
      document.removeEventListener('visibilitychange', ask)
      void lock?.release().catch(() => undefined)
    }
  }, [])
}
