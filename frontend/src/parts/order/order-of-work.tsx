import type { CanalPlan, ExpectedStep, InstrumentName, SheetStep, StopRow } from '@/api/shapes'
import { InstrumentLabel } from '@/parts/instrument'
import { depthPath, tabledPath } from '@/parts/rationale/paths'
import { TouchHint, Why } from '@/parts/rationale/why'
import { about, mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './order.css'
import { otherwise, type WorkStep, workOf } from './work'

interface Props {
  canal: CanalPlan
  instruments: readonly InstrumentName[]
  stops: readonly StopRow[]
  /** Whether expected depths are shown. */
  expected: boolean
}

/** The steps of one canal in the order expected, its hold points, and what is withheld and why. */
export function OrderOfWork({ canal, instruments, stops, expected }: Props) {
  const byKey = new Map(instruments.map((i) => [i.key, i]))
  return (
    <div class="stack">
      <TouchHint />
      {workOf(canal).map(({ phase, pass, steps }) => (
        <section key={`${phase}${pass}`} class="work-phase">
          <h3>
            {words.phase(phase)}
            {pass > 1 && <span class="soft"> · {words.order.pass(pass)}</span>}
          </h3>
          <ol>
            {steps.map((step, i) => (
              <li key={step.key}>
                <Step
                  canal={canal}
                  step={step}
                  byKey={byKey}
                  stops={stops}
                  said={steps[i - 1]?.node.say}
                  expected={expected}
                />
              </li>
            ))}
          </ol>
        </section>
      ))}
      <Blocked canal={canal} byKey={byKey} />
      {canal.withheld.map((w) => (
        <p key={w.code} class="withheld">
          {words.order.withheld(words.phase(w.from_phase))} {w.says}
        </p>
      ))}
    </div>
  )
}

type ByKey = ReadonlyMap<string, InstrumentName>

const nameOf = (key: string | null, byKey: ByKey) => (key === null ? '' : (byKey.get(key)?.name ?? key))

interface StepProps {
  canal: CanalPlan
  expected: boolean
  step: WorkStep
  byKey: ByKey
  stops: readonly StopRow[]
  /** What the step before said: not said twice. */
  said: string | undefined
}

function Step({ canal, step: { node, after, expected: estimate }, byKey, stops, said, expected }: StepProps) {
  // To resistance, stopping short is what is expected; to length it is not.
  const instead =
    node.target === 'to_length' && node.action === 'instrument' ? otherwise(canal, node.id, 'short') : undefined
  return (
    <>
      <p class="work-step">
        <span class="grow">
          <What node={node} byKey={byKey} />
        </span>
        <Where canal={canal} node={node} byKey={byKey} stops={stops} />
      </p>
      {expected && estimate && tells(node, estimate.step) && (
        <Estimate canal={canal.canal} of={estimate} byKey={byKey} />
      )}
      {node.say && node.say !== said && <p class="small">{node.say}</p>}
      {after.length > 0 && <p class="small soft">{words.order.afterwards(after.map((n) => following(n, byKey)))}</p>}
      {instead && (
        <p class="small">
          {words.order.ifShort(
            instead.steps.map((n) => inBrief(n, byKey)),
            instead.then,
          )}
        </p>
      )}
    </>
  )
}

/** What to do when the small instrument does not pass, said once for the canal. */
function Blocked({ canal, byKey }: { canal: CanalPlan; byKey: ByKey }) {
  const small = canal.expected_path
    .map((id) => canal.run_sheet.nodes[id])
    .find((n) => n?.kind === 'do' && 'blocked' in n.exits)
  const instead = small && otherwise(canal, small.id, 'blocked')
  if (small?.kind !== 'do' || !instead) return null
  const name = nameOf(small.instrument, byKey)
  return (
    <p class="small">
      {words.order.ifBlocked(
        name,
        instead.steps.slice(0, 2).map((n) => inBrief(n, byKey)),
      )}
    </p>
  )
}

function inBrief(node: SheetStep, byKey: ByKey): string {
  const what = node.instrument ? nameOf(node.instrument, byKey) : words.order.action(node.action).toLowerCase()
  return node.say ? `${what} (${node.say.replace(/\.$/, '').toLowerCase()})` : what
}

function What({ node, byKey }: { node: SheetStep; byKey: ByKey }) {
  const instrument = node.instrument ? byKey.get(node.instrument) : undefined
  const action = words.order.action(node.action)
  if (node.hold_point)
    return <b class="hold-point">{words.order.holdPoint(node.hold_point, node.action === 'image')}</b>
  if (!node.instrument) return <b>{action}</b>
  const note = node.action === 'instrument' ? words.order.motion(instrument?.motion ?? '') : action
  return <InstrumentLabel name={instrument?.name ?? node.instrument} colour={instrument?.colour ?? null} note={note} />
}

function Where({ canal, node, byKey, stops }: Pick<StepProps, 'canal' | 'byKey' | 'stops'> & { node: SheetStep }) {
  if (node.shorter_than) {
    const shorter = words.order.shorter(mm(node.shorter_than.less_um / 1000))
    return (
      <span class="small">
        <Why canal={canal.canal} of="stops.make_room" title={words.rationale.makeRoom} value={shorter} />
      </span>
    )
  }
  if (node.stop_um === null) return null
  const stop = mm(node.stop_um / 1000)
  const of = tabledPath(stops, canal, node.instrument ?? '', node.stop_um / 1000)
  const title = words.rationale.stop(nameOf(node.instrument, byKey))
  return (
    <span class={`number ${node.target === 'to_resistance' ? 'to-resistance' : ''}`}>
      <Why canal={canal.canal} of={of} title={title} value={stop} />
      {node.target && <small class="target">{words.order.target(node.target)}</small>}
    </span>
  )
}

/** Whether an expectation says more than the stop does. */
function tells(node: SheetStep, step: ExpectedStep): boolean {
  return step.felt !== null || node.target === 'to_resistance' || node.stop_um !== Math.round(step.depth_mm * 1000)
}

function Estimate({ canal, of, byKey }: { canal: string; of: NonNullable<WorkStep['expected']>; byKey: ByKey }) {
  const { step, index } = of
  const [low, high] = [step.low_mm, step.high_mm].map((depth) => (depth == null ? undefined : about(depth)))
  const says = step.felt == null ? words.expected.step(about(step.depth_mm), low, high) : undefined
  return (
    <p class="small soft">
      <Why
        canal={canal}
        of={depthPath(index)}
        title={words.rationale.expected(nameOf(step.instrument, byKey))}
        value={says ?? words.expected.recordedAs(mm(step.depth_mm), words.expected.felt(step.felt ?? 'as_expected'))}
      />
      {says && step.as_if_straight && <span class="block">{words.expected.asIfStraight}</span>}
    </p>
  )
}

function following(node: SheetStep, byKey: ByKey): string {
  if (node.action === 'irrigate') {
    const at = node.needle_at_most_um === null ? undefined : mm(node.needle_at_most_um / 1000)
    return words.order.irrigate(node.volume_ml, at)
  }
  return words.order.recapitulate(
    nameOf(node.instrument, byKey),
    node.stop_um === null ? undefined : mm(node.stop_um / 1000),
  )
}
