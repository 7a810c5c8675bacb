import { useLayoutEffect, useState } from 'preact/hooks'
import type { CanalShown, CaseShown, Length } from '@/api/shapes'
import { StatusPill } from '@/panels/case-row'
import { CaseImages } from '@/panels/images/case-images'
import { AfterDrawn } from '@/parts/after-drawn'
import { Page } from '@/parts/page'
import { RecordLink } from '@/parts/record-link'
import { Seen } from '@/parts/seen'
import { Tooth } from '@/parts/tooth/tooth'
import { address, asksFor, go } from '@/router'
import { useCase, useKits, useTechniques } from '@/store/cache/cases'
import { useVersion, useVersions } from '@/store/cache/plans'
import { useEarlier, useTreatment, useWorks } from '@/store/chair/chair'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { AddCanal } from './add-canal'
import { Alias } from './alias'
import { MeasuredPanel } from './canal-panel'
import { DifficultyFactors } from './difficulty-factors'
import { LengthsDrawn } from './lengths-drawn'
import { Measure } from './measure/measure'
import { RootCard } from './root-card'
import { ToothFacts } from './tooth-facts'
import './case.css'

interface Props {
  id: string
  /** The canal that is shown unfolded, with its readings. */
  canalId?: string
}

/** A tooth: its canals on one board, the selected one alone, what is due, and what else was charted. */
export function Case({ id, canalId }: Props) {
  const cached = useCase(id)
  const [touched, setTouched] = useState<string>()
  const [measured, setMeasured] = useMeasured()
  const works = useWorks(id)
  const shown = cached.value
  const home = `/cases/${id}`
  const byAddress = shown?.canals.find((canal) => canal.id === canalId)
  const canal = byAddress ?? shown?.canals.find(({ name }) => name === touched) ?? (shown && dueOf(shown))
  const pick = (name: string) => {
    setTouched(name)
    const other = shown?.canals.find((each) => each.name === name)
    if (canalId && other) go(`${home}/canals/${other.id}`, { replace: true })
  }
  return (
    <Page
      title={shown ? words.chart.title(shown.tooth.iso, shown.patient_alias) : words.cases.title}
      under={shown && words.setting[shown.setting]}
      back={{ to: canalId ? home : '/cases', says: words.back }}
      aside={shown && <StatusPill of={shown.status} />}
      wide
      foot={shown && <Dock of={shown} canal={canal} works={works} onMeasure={() => setMeasured({})} />}
    >
      <Seen of={cached} rows={5}>
        {(it) => (
          <>
            <Along of={it} />
            {canalId && !byAddress ? (
              <p>{words.notFound.says}</p>
            ) : (
              <Charted of={it} canal={canal} unfolded={canalId !== undefined} onPick={pick} />
            )}
          </>
        )}
      </Seen>
      {measured && works && shown && (
        <Measure
          of={shown}
          begins={canal?.id}
          method={measured.method}
          onClose={() => setMeasured(undefined)}
          onMeasured={() => go(`${home}/plan`)}
        />
      )}
    </Page>
  )
}

/** What the sheet is opened for; none: nothing is measured now. */
type Measured = { readonly method?: 'junction' } | undefined

/** The address may ask for the sheet. */
function useMeasured() {
  const state = useState<Measured>()
  const [, setMeasured] = state
  useLayoutEffect(() => {
    if (asksFor('?measure')) setMeasured({})
    else if (asksFor('?method=junction')) setMeasured({ method: 'junction' })
  }, [address.value])
  return state
}

const NEXT: readonly Length['state'][] = ['missing', 'unsettled', 'to_settle', 'estimated', 'settled']

/** The canal that has most need of a reading. */
function dueOf(of: CaseShown): CanalShown | undefined {
  const pending = pendingReadingsOf(of.id).value
  const rank = ({ id, length, length_problem }: CanalShown) => {
    const waits = pending.some((reading) => reading.canal === id)
    return NEXT.indexOf(waits ? 'estimated' : (length?.state ?? (length_problem ? 'unsettled' : 'missing')))
  }
  return of.canals.toSorted((a, b) => rank(a) - rank(b))[0]
}

interface ChartedProps {
  of: CaseShown
  canal: CanalShown | undefined
  unfolded: boolean
  onPick: (canal: string) => void
}

function Charted({ of, canal, unfolded, onPick }: ChartedProps) {
  const joinable = of.roots.filter((root) => of.canals.filter((c) => c.root === root.name).length > 1)
  return (
    <Tooth board={canal && <LengthsDrawn of={of} picked={canal.name} onPick={onPick} />}>
      {of.status.state !== 'none' && (
        <p class="small">
          {of.status.says} {of.status.do}
        </p>
      )}
      {canal && <MeasuredPanel canal={canal} of={of} unfolded={unfolded} />}
      {!unfolded && (
        <AfterDrawn>
          <AddCanal to={of} />
          {joinable.map((root) => (
            <RootCard key={root.name} root={root} of={of} />
          ))}
          <CaseImages of={of} />
          <ToothFacts of={of} />
          <DifficultyFactors of={of} />
          <Alias of={of} />
          {of.version && <RecordLink caseId={of.id} />}
        </AfterDrawn>
      )}
    </Tooth>
  )
}

interface DockProps {
  of: CaseShown
  canal: CanalShown | undefined
  works: boolean
  onMeasure: () => void
}

const ACTIONS = ['chair', 'measure', 'plan'] as const

/** What is due at the right: measuring, then planning, then the work; what else there is beside it. */
function Dock({ of, canal, works, onMeasure }: DockProps) {
  const pending = pendingReadingsOf(of.id).value
  const student = membership.value?.role === 'student'
  const unmeasured = of.canals.some((c) => c.readings.length === 0 && !pending.some(({ canal }) => canal === c.id))
  const due = works && unmeasured ? 'measure' : of.status.state === 'approved' ? 'chair' : 'plan'
  const looks = (what: typeof due) => (what === due ? 'button main' : 'button answer')
  const actions = {
    measure: works && canal && (
      <button key="measure" type="button" class={looks('measure')} onClick={onMeasure}>
        {words.measure.openOne(canal.name)}
      </button>
    ),
    // A case is planned by its student; others read the version that stands.
    plan: (student || of.version) && (
      <a key="plan" class={looks('plan')} href={student ? `/cases/${of.id}/plan` : `/plans/${of.version?.id}`}>
        {of.status.state === 'none' ? words.chart.planNew : words.chart.planSee}
      </a>
    ),
    chair: of.status.approved_number !== null && (
      <a key="chair" class={looks('chair')} href={`/cases/${of.id}/chair`}>
        {words.chair.open}
      </a>
    ),
  }
  const inOrder = [...ACTIONS.filter((what) => what !== due), due] as const
  return <div class="case-dock">{inOrder.map((what) => actions[what])}</div>
}

/** Brings along on the phone what planning and working this case need, so that both go on without a connection. */
function Along({ of }: { of: CaseShown }) {
  const treatment = useTreatment(of.id).value
  const versions = useVersions(of.id).value
  const hash = treatment?.course?.plan_hash
  useVersion(versions?.find((version) => version.hash === hash)?.id)
  useEarlier(of.id, versions, treatment)
  useVersion(of.version?.id)
  useKits(of.programme_id)
  useTechniques(of.programme_id)
  return null
}
