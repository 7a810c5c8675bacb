import type { ComponentChildren } from 'preact'
import type { CanalPlan, Caution, Plan } from '@/api/shapes'
import { CanalFigures } from '@/parts/canal-figures/canal-figures'
import { Cautions } from '@/parts/cautions'
import { lengthsOf } from '@/parts/depth-board/shape'
import { isWide, sizeOf } from '@/parts/final-size'
import { Fold } from '@/parts/fold'
import { InstrumentLabel } from '@/parts/instrument'
import { OrderOfWork } from '@/parts/order/order-of-work'
import { stopPath } from '@/parts/rationale/paths'
import { Why } from '@/parts/rationale/why'
import { CanalPanel } from '@/parts/tooth/tooth'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

interface Props {
  plan: Plan
  canal: CanalPlan
  /** Whether expected depths are shown. */
  expected: boolean
  act: ((caution: Caution) => ComponentChildren) | undefined
  children: ComponentChildren
}

/** What is planned of the selected canal: size and length, why, its stops in order, its cautions. */
export function PlannedCanal({ plan, canal, expected, act, children }: Props) {
  const cautions = plan.cautions.filter((caution) => caution.canal === canal.canal && caution.severity !== 'note')
  return (
    <CanalPanel
      canal={canal.canal}
      from={canal.reference_point && words.chart.from(canal.reference_point)}
      number={<SizeAndEnd canal={canal} />}
    >
      <p class="small">
        {words.rationale.length(canal.length.state, canal.length.rests_on)}{' '}
        {!isWide(canal.size_range) && whySize(canal)}
      </p>
      {children}
      <StopsInOrder plan={plan} canal={canal} />
      {cautions.length > 0 && <Cautions plan={{ ...plan, cautions }} act={act} />}
      <Fold says={words.views.order(canal.canal)}>
        <OrderOfWork
          canal={canal}
          instruments={plan.tray_list.map((item) => item.instrument)}
          stops={plan.stop_table}
          expected={expected}
        />
        <CanalFigures canal={canal} />
      </Fold>
    </CanalPanel>
  )
}

/** The reason that sets the size, in a sentence; its source stands with the reasons for the range. */
function whySize({ size_range: { reasons }, final_size }: CanalPlan): string | undefined {
  const says = (reasons.find((reason) => reason.size === final_size) ?? reasons[0])?.says
  return says?.split(' (')[0]?.replace(/\.?$/, '.')
}

function SizeAndEnd({ canal }: { canal: CanalPlan }) {
  const ends = canal.end_mm === null ? [] : lengthsOf(canal.end_mm, canal.length, !canal.provisional)
  return (
    <>
      <span class="number">{sizeOf(canal)}</span>
      <output class="length-number number" aria-label={words.chart.length}>
        {ends.length > 0 && <Why canal={canal.canal} of="end_mm" title={words.rationale.end} value={ends.join(' ')} />}
      </output>
    </>
  )
}

/** The instruments of this canal in order of use, each with its stop; equal ones that follow each other once. */
function StopsInOrder({ plan, canal }: { plan: Plan; canal: CanalPlan }) {
  const stops = plan.stop_table.flatMap((row) =>
    row.stops.flatMap((stop) => (stop.canal === canal.canal ? [{ ...stop, instrument: row.instrument }] : [])),
  )
  if (stops.length === 0) return null
  return (
    <ol class="stops-in-order" aria-label={words.views.stopsOf(canal.canal)}>
      {stops.map(({ instrument, stop_mm, target, why }, i) => (
        <li key={`${i}${instrument.key}`}>
          <InstrumentLabel name={instrument.name} colour={instrument.colour} />
          <span class={`number ${target.replace('_', '-')}`}>
            <Why
              canal={canal.canal}
              of={why || stopPath(canal, stop_mm)}
              title={words.rationale.stop(instrument.name)}
              value={mm(stop_mm)}
            />
          </span>
        </li>
      ))}
    </ol>
  )
}
