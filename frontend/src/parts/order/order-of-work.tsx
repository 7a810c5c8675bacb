import type { CanalPlan, Do, InstrumentName } from '@/api/shapes'
import { InstrumentLabel } from '@/parts/instrument'
import { mm } from '@/parts/millimetres'
import { words } from '@/words/en'
import './order.css'
import { type WorkStep, workOf } from './work'

interface Props {
  canal: CanalPlan
  instruments: readonly InstrumentName[]
}

/** The steps of one canal in the order expected, its hold points, and what is withheld and why. */
export function OrderOfWork({ canal, instruments }: Props) {
  const byKey = new Map(instruments.map((i) => [i.key, i]))
  return (
    <div class="stack">
      {workOf(canal).map(({ phase, pass, steps }) => (
        <section key={`${phase}${pass}`} class="work-phase">
          <h3>
            {words.phase(phase)}
            {pass > 1 && <span class="soft"> · {words.order.pass(pass)}</span>}
          </h3>
          <ol>
            {steps.map((step, i) => (
              <li key={step.key}>
                <Step step={step} byKey={byKey} said={steps[i - 1]?.node.say} />
              </li>
            ))}
          </ol>
        </section>
      ))}
      {canal.withheld.map((w) => (
        <p key={w.code} class="withheld">
          {words.order.withheld(words.phase(w.from_phase))} {w.says}
        </p>
      ))}
    </div>
  )
}

interface StepProps {
  step: WorkStep
  byKey: ReadonlyMap<string, InstrumentName>
  /** What the step before said: not said twice. */
  said: string | undefined
}

function Step({ step: { node, after }, byKey, said }: StepProps) {
  return (
    <>
      <p class="work-step">
        <span class="grow">
          <What node={node} byKey={byKey} />
        </span>
        <Where node={node} />
      </p>
      {node.say && node.say !== said && <p class="small">{node.say}</p>}
      {after.length > 0 && <p class="small soft">{words.order.afterwards(after.map((n) => following(n, byKey)))}</p>}
    </>
  )
}

function What({ node, byKey }: { node: Do; byKey: ReadonlyMap<string, InstrumentName> }) {
  const instrument = node.instrument ? byKey.get(node.instrument) : undefined
  const action = words.order.action(node.action)
  if (node.hold_point)
    return <b class="hold-point">{words.order.holdPoint(node.hold_point, node.action === 'image')}</b>
  if (!node.instrument) return <b>{action}</b>
  const note = node.action === 'instrument' ? words.order.motion(instrument?.motion ?? '') : action
  return <InstrumentLabel name={instrument?.name ?? node.instrument} colour={instrument?.colour ?? null} note={note} />
}

function Where({ node }: { node: Do }) {
  if (node.shorter_than) return <span class="small">{words.order.shorter(mm(node.shorter_than.less_um / 1000))}</span>
  if (node.stop_um === null) return null
  return (
    <span class={`number ${node.target === 'to_resistance' ? 'to-resistance' : ''}`}>
      {mm(node.stop_um / 1000)}
      {node.target && <small class="target">{words.order.target(node.target)}</small>}
    </span>
  )
}

function following(node: Do, byKey: ReadonlyMap<string, InstrumentName>): string {
  if (node.action === 'irrigate') {
    const at = node.needle_at_most_um === null ? undefined : mm(node.needle_at_most_um / 1000)
    return words.order.irrigate(node.volume_ml, at)
  }
  const name = node.instrument ? (byKey.get(node.instrument)?.name ?? node.instrument) : ''
  return words.order.recapitulate(name, node.stop_um === null ? undefined : mm(node.stop_um / 1000))
}
