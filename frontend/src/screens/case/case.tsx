import { useState } from 'preact/hooks'
import type { CaseShown } from '@/api/shapes'
import { StatusPill } from '@/panels/case-row'
import { CaseImages } from '@/panels/images/case-images'
import { Page } from '@/parts/page'
import { RecordLink } from '@/parts/record-link'
import { Seen } from '@/parts/seen'
import { useCase } from '@/store/cache/cases'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { AddCanal } from './add-canal'
import { Alias } from './alias'
import { CanalRow } from './canal-row'
import { DifficultyFactors } from './difficulty-factors'
import { LengthsDrawn } from './lengths-drawn'
import { Measure } from './measure/measure'
import { RootCard } from './root-card'
import { ToothFacts } from './tooth-facts'
import './case.css'
import { asksFor } from '@/router'
import { useKits, useTechniques } from '@/store/cache/cases'
import { useVersion, useVersions } from '@/store/cache/plans'
import { useEarlier, useTreatment, useWorks } from '@/store/chair/chair'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'

/** A case: where its plan stands, its canals with their lengths, how roots run, and what else was charted. */
export function Case({ id }: { id: string }) {
  const cached = useCase(id)
  const [measured, setMeasured] = useState<Measured>(() => (asksFor('?measure') ? 'next' : undefined))
  const works = useWorks(id)
  const shown = cached.value
  return (
    <Page
      title={shown ? words.chart.title(shown.tooth.iso, shown.patient_alias) : words.cases.title}
      under={shown && words.chart.under(shown.tooth.name, words.setting[shown.setting])}
      back={{ to: '/cases', says: words.back }}
      aside={shown?.version && <RecordLink caseId={id} />}
      foot={shown && <Dock of={shown} works={works} onMeasure={() => setMeasured('next')} />}
    >
      <Seen of={cached} rows={5}>
        {(it) => <Charted of={it} onMeasure={works ? setMeasured : undefined} />}
      </Seen>
      {measured && works && shown && <Measure of={shown} begins={measured} onClose={() => setMeasured(undefined)} />}
    </Page>
  )
}

/** The canal to begin with, or whichever is due; none: nothing is measured now. */
type Measured = string | 'next' | undefined

interface ChartedProps {
  of: CaseShown
  onMeasure: ((canal: string) => void) | undefined
}

function Charted({ of, onMeasure }: ChartedProps) {
  const joinable = of.roots.filter((root) => of.canals.filter((c) => c.root === root.name).length > 1)
  return (
    <>
      <Along of={of} />
      <div class="row wrap">
        <StatusPill of={of.status} />
        {of.status.state !== 'none' && (
          <p class="grow small">
            {of.status.says} {of.status.do}
          </p>
        )}
      </div>
      <section class="stack">
        <h2>{words.chart.lengths}</h2>
        <LengthsDrawn of={of} onMeasure={onMeasure} />
        <ul class="ledger" aria-label={words.chart.lengths}>
          {of.canals.map((canal) => (
            <li key={canal.id}>
              <CanalRow of={canal} caseId={of.id} />
            </li>
          ))}
        </ul>
        <AddCanal to={of} />
      </section>
      {joinable.map((root) => (
        <RootCard key={root.name} root={root} of={of} />
      ))}
      <CaseImages of={of} />
      <ToothFacts of={of} />
      <DifficultyFactors of={of} />
      <Alias of={of} />
    </>
  )
}

interface DockProps {
  of: CaseShown
  works: boolean
  onMeasure: () => void
}

const ACTIONS = ['chair', 'measure', 'plan'] as const

/** What is due at the right: measuring, then planning, then the work; what else there is beside it. */
function Dock({ of, works, onMeasure }: DockProps) {
  const pending = pendingReadingsOf(of.id).value
  const student = membership.value?.role === 'student'
  const measures = works && of.canals.length > 0
  const unmeasured = of.canals.find((c) => c.readings.length === 0 && !pending.some(({ canal }) => canal === c.id))
  const due = measures && unmeasured ? 'measure' : of.status.state === 'approved' ? 'chair' : 'plan'
  const looks = (what: typeof due) => (what === due ? 'button main' : 'button answer')
  const actions = {
    measure: measures && (
      <button key="measure" type="button" class={looks('measure')} onClick={onMeasure}>
        {unmeasured ? words.measure.openOne(unmeasured.name) : words.measure.open}
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
