import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'
import type { CanalShown, CaseShown } from '@/api/shapes'
import { StatusPill } from '@/panels/case-row'
import { CaseImages } from '@/panels/images/case-images'
import { AfterDrawn } from '@/parts/after-drawn'
import { Page } from '@/parts/page'
import { PlannedTooth } from '@/parts/plan/planned-tooth'
import { RecordLink } from '@/parts/record-link'
import { Seen } from '@/parts/seen'
import { Tooth } from '@/parts/tooth/tooth'
import { address, asksFor, go } from '@/router'
import { useCase } from '@/store/cache/cases'
import { useWorks } from '@/store/chair/chair'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { AddCanal } from './add-canal'
import { Alias } from './alias'
import { useBench, useStates } from './bench'
import { MeasuredPanel, More } from './canal-panel'
import { DifficultyFactors } from './difficulty-factors'
import { Beside, Dock, dueOf, everyMeasured } from './dock'
import { LengthsDrawn } from './lengths-drawn'
import { Measure } from './measure/measure'
import { type Bench, Planning } from './plan/planning'
import { RootCard } from './root-card'
import { ToothFacts } from './tooth-facts'
import './case.css'

interface Props {
  id: string
  /** The canal that is shown unfolded, with its readings. */
  canalId?: string
  /** The plan is asked for although not every canal was measured. */
  planned?: boolean
}

/** A tooth: its canals on one board, the selected one alone, what is due, and what else was charted. */
export function Case({ id, canalId, planned = false }: Props) {
  const cached = useCase(id)
  const bench = useBench(id, cached)
  const [touched, setTouched] = useState<string>()
  const [measured, setMeasured] = useMeasured()
  const works = useWorks(id)
  const of = bench?.of ?? cached.value
  const home = `/cases/${id}`
  const byAddress = of?.canals.find((canal) => canal.id === canalId)
  const canal = byAddress ?? of?.canals.find(({ name }) => name === touched) ?? (of && dueOf(of))
  const byItself = of !== undefined && (of.version !== null || everyMeasured(of))
  const pick = (name: string) => {
    setTouched(name)
    const other = of?.canals.find((each) => each.name === name)
    if (canalId && other) go(`${home}/canals/${other.id}`, { replace: true })
  }
  const page = (children: ComponentChildren, foot: ComponentChildren) => (
    <Page
      title={of ? words.chart.title(of.tooth.iso, of.patient_alias) : words.cases.title}
      under={of && words.setting[of.setting]}
      back={{ to: canalId || (planned && !byItself) ? home : '/cases', says: words.back }}
      aside={of && <StatusPill of={of.status} />}
      wide
      foot={foot}
    >
      <Seen of={cached} rows={5}>
        {() => children}
      </Seen>
    </Page>
  )
  const shown = { works, page, pick, onMeasure: () => setMeasured({}) }
  return (
    <>
      {!of || !canal || (canalId && !byAddress) ? (
        page(of && <Nothing of={of} lost={canalId !== undefined} />, null)
      ) : (
        <Shown {...shown} of={of} canal={canal} bench={planned || byItself ? bench : undefined} unfolded={!!canalId} />
      )}
      {measured && works && of && (
        <Measure
          of={of}
          begins={canal?.id}
          method={measured.method}
          onClose={() => setMeasured(undefined)}
          onMeasured={() => (canalId ? go(home) : setMeasured(undefined))}
        />
      )}
    </>
  )
}

/** A case without canals, or without the one that was asked for. */
function Nothing({ of, lost }: { of: CaseShown; lost: boolean }) {
  return lost ? (
    <p>{words.notFound.says}</p>
  ) : (
    <div class="stack">
      <Rest of={of} />
    </div>
  )
}

interface ShownProps {
  of: CaseShown
  canal: CanalShown
  works: boolean
  bench: Bench | undefined
  unfolded: boolean
  pick: (canal: string) => void
  onMeasure: () => void
  page: (children: ComponentChildren, foot: ComponentChildren) => preact.JSX.Element
}

/** The tooth in the state that it has: its lengths so far, or what is planned of it. */
function Shown({ of, canal, works, bench, unfolded, pick, onMeasure, page }: ShownProps) {
  const student = membership.value?.role === 'student'
  const states = useStates(of.id)
  const dock = { of, canal, works, onMeasure }
  // What was decided stands beside it.
  const status = !['none', 'approved'].includes(of.status.state) && (
    <p class="small">
      {of.status.says} {of.status.do}
    </p>
  )
  const lengths = (notices: ComponentChildren, rest: ComponentChildren) => (
    <Tooth board={<LengthsDrawn of={of} picked={canal.name} onPick={pick} />}>
      {notices}
      <MeasuredPanel canal={canal} of={of} unfolded={unfolded} />
      {!unfolded && <AfterDrawn>{rest}</AfterDrawn>}
    </Tooth>
  )
  const rest = <Rest of={of} />
  if (unfolded || !bench || (!student && !bench.last)) return page(lengths(status, rest), <Dock {...dock} />)
  const planned = { picked: canal.name, onPick: pick, states }
  const more = <More canal={canal} of={of} />
  if (student)
    return (
      <Planning
        {...bench}
        {...planned}
        more={more}
        rest={rest}
        status={status}
        dock={(settled) => <Beside {...dock} settled={settled} />}
        unplanned={lengths}
        page={page}
      />
    )
  return page(
    bench.last && <PlannedTooth plan={bench.last.plan} {...planned} notices={status} choose={more} beside={rest} />,
    <Dock {...dock} />,
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

/** What else was charted of the tooth. */
function Rest({ of }: { of: CaseShown }) {
  const joinable = of.roots.filter((root) => of.canals.filter((c) => c.root === root.name).length > 1)
  return (
    <>
      <AddCanal to={of} />
      {joinable.map((root) => (
        <RootCard key={root.name} root={root} of={of} />
      ))}
      <CaseImages of={of} />
      <ToothFacts of={of} />
      <DifficultyFactors of={of} />
      <Alias of={of} />
      {of.version && <RecordLink caseId={of.id} />}
    </>
  )
}
