import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Treatment } from '@/api/shapes'
import { OLD_S } from '@/parts/as-of'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { RecordLink } from '@/parts/record-link'
import { Seen } from '@/parts/seen'
import { useAhead } from '@/store/bands'
import { useCase } from '@/store/cases'
import { type Chair as AtChair, useChair, useTreatment } from '@/store/chair'
import { usePolling } from '@/store/use'
import { TooNew } from '@/walk/walk'
import { words } from '@/words/en'
import { BandsBoard, LastDepth } from './bands'
import { CanalStrip } from './canal-strip'
import { ClosedVisit } from './closed-visit'
import { Dock } from './dock'
import { DoneList } from './done-list'
import { Halted, SalineOnly } from './halted'
import { IrrigateMore } from './irrigate'
import { LengthAgain } from './length-again'
import { MayStart } from './may-start'
import { NextAtTray } from './next-at-tray'
import { Note } from './note'
import { NowCard } from './now-card'
import { Outbox } from './outbox'
import { Trouble } from './trouble'
import './chair.css'
import './may-start.css'

const SECONDS_3 = 3000 // a supervisor's word must reach the chair within five seconds

/** The work on a tooth, one step at a time; with no connection as with one. */
export function Chair({ id }: { id: string }) {
  const found = useCase(id)
  const treatment = useTreatment(id)
  usePolling(true, treatment, SECONDS_3)
  const of = found.value
  return (
    <Page
      title={words.chair.title(of?.tooth.iso ?? '')}
      under={of && `${of.patient_alias} · ${words.setting[of.setting]}`}
      back={{ to: `/cases/${id}`, says: words.back }}
      aside={<RecordLink caseId={id} />}
      wide
    >
      <Seen of={treatment} rows={5} old_s={OLD_S}>
        {(value) => <Work caseId={id} treatment={value} />}
      </Seen>
    </Page>
  )
}

function Work({ caseId, treatment }: { caseId: string; treatment: Treatment }) {
  useAwake()
  try {
    const chair = useChair(caseId, treatment)
    if (chair === null) return <Notice sign="note">{words.chair.notApproved}</Notice>
    if (!chair) return <Notice sign="note">{words.chair.notHere}</Notice>
    return <Standing caseId={caseId} chair={chair} />
  } catch (error) {
    if (error instanceof TooNew) return <Notice sign="stop">{words.chair.tooNew}</Notice>
    throw error
  }
}

function Standing({ caseId, chair }: { caseId: string; chair: AtChair }) {
  const ahead = useAhead(caseId, chair)
  const canals = useMemo(() => chair.plan.canals.filter((c) => chair.course.canals[c.canal]), [chair.plan])
  const [picked, setPicked] = useState<string>()
  const current = picked ?? (chair.course.turnedTo || canals[0]?.canal) ?? ''
  const canal = canals.find((c) => c.canal === current) ?? canals[0]
  const course = canal && chair.course.canals[canal.canal]
  // While the tooth is halted there is one thing to read and nothing to answer.
  const halted = chair.course.haltedBy !== null
  const { closed } = chair.course.visit
  const open = chair.course.missing.length === 0
  const step = course ? `${canal?.canal} ${course.walk.left.length}` : ''
  // Another step is read from its top.
  useEffect(() => globalThis.scrollTo?.(0, 0), [step])
  const turn = (name: string) => {
    setPicked(name)
    if (name !== current) void chair.record(name, '', { kind: 'turn' })
  }
  return (
    <div class="chair">
      {halted && <Halted chair={chair} />}
      <SalineOnly chair={chair} />
      <Outbox chair={chair} />
      <CanalStrip chair={chair} canals={canals} current={canal?.canal ?? ''} onTurn={turn} />
      {closed ? <ClosedVisit chair={chair} caseId={caseId} /> : !halted && <MayStart chair={chair} canal={canal} />}
      {canal && open && <LastDepth chair={chair} ahead={ahead} canal={canal} />}
      {canal && course && open && (
        <NowCard key={step} chair={chair} canal={canal} course={course}>
          <div class="now-more">
            <IrrigateMore chair={chair} canal={canal.canal} course={course} />
            <NextAtTray chair={chair} canals={canals} current={canal.canal} onTurn={turn} />
          </div>
        </NowCard>
      )}
      {canal && course && open && !course.toPlan && (
        <LengthAgain key={canal.canal} chair={chair} canal={canal} course={course} />
      )}
      {canal && open && <BandsBoard chair={chair} ahead={ahead} canal={canal} />}
      <DoneList chair={chair} />
      <Note chair={chair} />
      {!closed && (
        <a class="button close-for-today" href={`/cases/${caseId}/chair/close`}>
          {words.visit.close}
        </a>
      )}
      {canal && closed && !halted && (
        <div class="dock">
          <Trouble chair={chair} canal={canal.canal} pausable={false} />
        </div>
      )}
      {canal && course && !halted && !closed && <Dock key={step} chair={chair} canal={canal} course={course} />}
    </div>
  )
}

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
