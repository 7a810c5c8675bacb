import type { CanalPlan, ExpectedStep, InstrumentName, Plan } from '@/api/shapes'
import { InstrumentLabel } from '@/parts/instrument'
import { Known } from '@/parts/known'
import { bandPath, depthPath } from '@/parts/rationale/paths'
import { Why } from '@/parts/rationale/why'
import { about, mm } from '@/units/millimetres'
import { words } from '@/words/en'
import type { Moment } from './moments'

interface Props {
  plan: Pick<Plan, 'canals' | 'tray_list'>
  moments: readonly Moment[]
  at: number
}

/** Where stepping through the work stands, in words: the insertion, what is expected of it, and what it takes off. */
export function MomentSays({ plan, moments, at }: Props) {
  const now = moments[at - 1]
  const canal = plan.canals.find((c) => c.canal === now?.canal)
  const instrument = plan.tray_list.find((item) => item.instrument.key === now?.step.instrument)?.instrument
  return (
    <output class="moment" aria-label={words.expected.says}>
      {now && canal ? (
        <Insertion
          moment={now}
          canal={canal}
          instrument={instrument}
          place={words.expected.place(at, moments.length)}
        />
      ) : at === 0 ? (
        <Before canals={plan.canals.filter((c) => moments.some((m) => m.canal === c.canal))} />
      ) : (
        <Whole canals={plan.canals.filter((c) => moments.some((m) => m.canal === c.canal))} steps={moments.length} />
      )}
    </output>
  )
}

/** The same in a sentence. */
export function momentSays(plan: Props['plan'], moments: readonly Moment[], at: number): string {
  const now = moments[at - 1]
  const place = words.expected.place(at, moments.length)
  if (!now) return place
  const named = plan.tray_list.find((item) => item.instrument.key === now.step.instrument)?.instrument.name
  const { depth_mm, felt, instrument } = now.step
  return words.expected.moment(
    place,
    named ?? instrument,
    now.canal,
    felt == null ? about(depth_mm) : mm(depth_mm),
    felt,
  )
}

interface InsertionProps {
  moment: Moment
  canal: CanalPlan
  instrument: InstrumentName | undefined
  place: string
}

function Insertion({ moment: { step, index }, canal, instrument, place }: InsertionProps) {
  const node = canal.run_sheet.nodes[step.node]
  const stop_um = node?.kind === 'do' ? node.stop_um : null
  const name = instrument?.name ?? step.instrument
  const band = bandOf(step)
  const depth = step.felt == null ? about(step.depth_mm) : mm(step.depth_mm)
  return (
    <>
      <p class="lead">
        <span class="place">{place}</span>
        <InstrumentLabel name={name} colour={instrument?.colour ?? null} />
        <span>
          {words.expected.inCanal} <b>{canal.canal}</b>
        </span>
        {stop_um !== null && <span class="small soft">{words.expected.stop(mm(stop_um / 1000))}</span>}
      </p>
      <p class="estimate">
        <i class="dot" aria-hidden="true" />
        {step.felt == null ? words.expected.expected : words.expected.recorded}{' '}
        <Why canal={canal.canal} of={depthPath(index)} title={words.rationale.expected(name)} value={depth}>
          <span class="number">{depth}</span>
        </Why>
        {step.felt != null && <span>{words.expected.felt(step.felt)}</span>}
        {band && (
          <span class="small">
            <Why canal={canal.canal} of={bandPath(index)} title={words.rationale.band(name)} value={band} />
          </span>
        )}
        {step.felt == null && step.as_if_straight && <span class="small soft">{words.expected.asIfStraight}</span>}
      </p>
      <p class="small soft">
        {words.expected.more({
          phase: node?.kind === 'do' ? words.phase(node.phase) : '',
          pass_number: step.pass_number,
          reach_share: step.reach_share,
          removes_mm3: step.removes_mm3,
        })}
      </p>
    </>
  )
}

/** Between which depths most of the canals drawn stop; nothing where they all stop at one. */
function bandOf({ low_mm, high_mm }: ExpectedStep): string | undefined {
  if (low_mm == null || high_mm == null || about(low_mm) === about(high_mm)) return undefined
  return words.expected.band(about(low_mm), about(high_mm))
}

function Before({ canals }: { canals: readonly CanalPlan[] }) {
  const initialShape = canals[0]?.expectation?.initial_shape
  return (
    <>
      <p class="strong">{words.expected.before}</p>
      {initialShape && <Known know={initialShape.know} />}
    </>
  )
}

function Whole({ canals, steps }: { canals: readonly CanalPlan[]; steps: number }) {
  return (
    <>
      <p class="strong">{words.expected.whole(steps)}</p>
      {canals.map(({ canal, expectation }) => {
        const says = expectation && words.expected.series(expectation)
        return (
          says && (
            <p key={canal} class="small">
              {canals.length > 1 && <b>{canal} </b>}
              <Why canal={canal} of="expectation.series_passes" title={words.rationale.passes} value={says} />
            </p>
          )
        )
      })}
    </>
  )
}
