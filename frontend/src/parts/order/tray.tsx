import type { InstrumentName, Plan } from '@/api/shapes'
import { InstrumentLabel } from '@/parts/instrument'
import { words } from '@/words/en'
import './order.css'

interface Props {
  plan: Pick<Plan, 'tray' | 'one_at_a_time' | 'tray_list'>
  /** Instruments taken up for several canals before they are put down, or one canal after the other. */
  shared: boolean
}

/** The order at the tray: each taking-up of an instrument and the canals it serves. */
export function TrayOrder({ plan, shared }: Props) {
  const order = shared ? plan.tray : plan.one_at_a_time
  const byKey = new Map(plan.tray_list.map((item) => [item.instrument.key, item.instrument]))
  const phases: { phase: string; steps: typeof order.steps }[] = []
  for (const step of order.steps) {
    const last = phases.at(-1)
    if (last?.phase === step.phase) last.steps = [...last.steps, step]
    else phases.push({ phase: step.phase, steps: [step] })
  }
  return (
    <div class="stack">
      {phases.map(({ phase, steps }, i) => (
        <section key={`${i}${phase}`} class="work-phase">
          <h3>{words.phase(phase)}</h3>
          <ol>
            {steps.map((step, j) => (
              <li key={`${j}${step.instrument}`} class="work-step">
                <span class="grow">
                  <ByKey instrument={step.instrument} byKey={byKey} />
                </span>
                <span>{step.canals.join(' · ')}</span>
              </li>
            ))}
          </ol>
        </section>
      ))}
    </div>
  )
}

function ByKey({ instrument, byKey }: { instrument: string; byKey: ReadonlyMap<string, InstrumentName> }) {
  const known = byKey.get(instrument)
  return <InstrumentLabel name={known?.name ?? instrument} colour={known?.colour ?? null} />
}

/** What to lay out, left to right in order of first use; apart, what only a canal that resists would need. */
export function TrayList({ items }: { items: Plan['tray_list'] }) {
  const within = items.filter((item) => !item.expected)
  return (
    <>
      <h2>{words.order.layOut}</h2>
      <Laid items={items.filter((item) => item.expected)} />
      {within.length > 0 && (
        <>
          <h3>{words.order.withinReach}</h3>
          <Laid items={within} />
        </>
      )}
    </>
  )
}

function Laid({ items }: { items: Plan['tray_list'] }) {
  return (
    <ol class="tray-list">
      {items.map(({ instrument, canals }) => (
        <li key={instrument.key}>
          <InstrumentLabel
            name={instrument.name}
            colour={instrument.colour}
            note={words.order.motion(instrument.motion)}
          />
          <span class="small soft wide">{canals.join(' · ')}</span>
          {instrument.motion !== 'hand' && <span class="small soft wide">{instrument.setting_says}</span>}
        </li>
      ))}
    </ol>
  )
}
