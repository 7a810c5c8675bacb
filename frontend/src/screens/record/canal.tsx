import type { CanalRecord, StepRecord } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { CanalPanel } from '@/parts/tooth/tooth'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

/** The selected canal: where it ends, how it differs from its plan, what its length rests on, and its work step by step. */
export function Canal({ of }: { of: CanalRecord }) {
  return (
    <CanalPanel
      canal={of.canal}
      from={of.reference_point && words.chart.from(of.reference_point)}
      number={<b class="number record-number">{of.end_mm == null ? words.record.noLength : mm(of.end_mm)}</b>}
    >
      <p class="strong">
        {[of.state ? words.chair.state[of.state] : words.record.notBegun, ...(of.differs ?? [])].join(', ')}
      </p>
      <p class="small">
        {restsOn(of)}
        <br />
        {sizesOf(of)}
      </p>
      {of.charted && <p class="small soft">{words.capital(of.charted)}</p>}
      <Work of={of} />
    </CanalPanel>
  )
}

/** The canal's length and what it rests on; else what is wrong with its readings. */
export function restsOn({ length, length_problem }: CanalRecord): string {
  return length ? words.record.restsOn(words.lengthState(length.state), methodsOf(length.rests_on)) : length_problem
}

/** The size as planned, and as far as it was done. */
export function sizesOf({ planned_size, largest_at_length }: CanalRecord): string {
  const sizes = [
    planned_size && words.record.planned(planned_size),
    largest_at_length && words.record.largest(largest_at_length),
  ]
  return sizes.filter(Boolean).join(' · ')
}

function methodsOf(methods: readonly string[]): string {
  return methods.map((method) => words.method(method)).join(', ')
}

/** What was done and what was passed over; what is ahead only as a number. Irrigating and recapitulating only where left out or added. */
function Work({ of }: { of: CanalRecord }) {
  const steps = of.steps.filter(isTold)
  const ahead = of.steps.filter((step) => step.comparison === 'not_yet').length
  if (steps.length === 0) return null
  return (
    <details class="record-work">
      <summary>{words.record.work(steps.length)}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.record.step}</th>
            <th scope="col">{words.record.stop}</th>
            <th scope="col">{words.record.depth}</th>
            <th scope="col">{words.record.expected}</th>
          </tr>
        </thead>
        <tbody>
          {steps.map((step) => (
            <Step key={`${step.version} ${step.node} ${step.pass_number}`} of={step} />
          ))}
        </tbody>
      </table>
      <p class="small soft">
        {words.record.estimate} {ahead > 0 && words.record.ahead(ahead)}
      </p>
    </details>
  )
}

const QUIET = ['irrigate', 'recapitulate']

function isTold(step: StepRecord): boolean {
  if (step.comparison === 'not_yet') return false
  return step.comparison !== 'as_planned' || !QUIET.includes(step.action)
}

function Step({ of }: { of: StepRecord }) {
  const mark = words.record.comparison[of.comparison]
  const action = of.instrument && of.action === 'instrument' ? '' : words.order.action(of.action)
  const what = [of.instrument, action, of.pass_number > 1 && words.record.time(of.pass_number)]
    .filter(Boolean)
    .join(', ')
  const how = of.how ? words.record.left[of.how] : ''
  return (
    <tr>
      <th scope="row">
        {what}
        {mark && (
          <span class="small strong record-mark">
            <Sign name={of.comparison === 'left_out' ? 'caution' : 'note'} /> {mark}
          </span>
        )}
      </th>
      <td>{of.stop_mm !== null && mm(of.stop_mm)}</td>
      <td>{of.depth_mm === null ? how : mm(of.depth_mm)}</td>
      <td>
        {of.low_mm !== null && of.high_mm !== null && `${of.low_mm.toFixed(1)}–${of.high_mm.toFixed(1)}`}
        {of.low_mm !== null && of.as_if_straight && <span class="small">, {words.expected.asIfStraight}</span>}
        {of.against_band && <span class="small"> {words.record.against[of.against_band]}</span>}
      </td>
    </tr>
  )
}
