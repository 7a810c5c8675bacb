import type { CanalRecord, ImagePurpose, RecordValue, StepRecord } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

/** Canal by canal: its length and what that rests on, its size as planned and as done, and the work step by step. */
export function Canals({ of }: { of: RecordValue }) {
  return (
    <section class="stack">
      <h2>{words.record.canals}</h2>
      <ul class="ledger">
        {of.canals.map((canal) => (
          <li key={canal.canal}>
            <section class="record-canal" aria-label={words.chart.canal(canal.canal)}>
              <OneCanal of={canal} />
            </section>
          </li>
        ))}
      </ul>
      <Entered of={of} />
      <Struck of={of} />
      <PutRight of={of} />
    </section>
  )
}

/** What other systems entered for people. */
function Entered({ of }: { of: RecordValue }) {
  // A record that was kept from before there were services has none.
  const rows = of.entered ?? []
  if (rows.length === 0) return null
  return (
    <>
      <h3>{words.record.entered}</h3>
      <ul class="ledger">
        {rows.map((row, number) => (
          <li key={number} class="small">
            {row.says}{' '}
            <span class="block soft">
              {words.record.enteredBy(row.service, row.person.name)}, {words.record.at(row.at)}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** Images that were put to another canal, or struck. */
function PutRight({ of }: { of: RecordValue }) {
  const says = words.images.putRight
  // A record that was kept from before images could be put right has none.
  const rows = of.images_put_right ?? []
  if (rows.length === 0) return null
  return (
    <>
      <h3>{says.title}</h3>
      <ul class="ledger">
        {rows.map((row) => (
          <li key={`${row.image_id}${row.at}`} class="small">
            <b>{row.canal || says.tooth}</b> {words.images.purpose[row.purpose as ImagePurpose]}:{' '}
            {row.moved_to === null
              ? says.struck(says.why[row.why] ?? '')
              : says.moved(row.canal || says.tooth, row.moved_to || says.tooth)}{' '}
            <span class="block soft">
              {row.who.name}, {words.record.at(row.at)}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** Readings that were mistakes: who struck them, when and why. */
function Struck({ of: { struck } }: { of: RecordValue }) {
  if (struck.length === 0) return null
  return (
    <>
      <h3>{words.struck.title}</h3>
      <ul class="ledger">
        {struck.map((reading) => (
          <li key={`${reading.canal}${reading.taken_at}`} class="small">
            <b>{reading.canal}</b> <del>{reading.says}</del>{' '}
            <span class="block soft">
              {words.struck.by(reading.who.name, words.record.at(reading.at), words.struck.why[reading.why])}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

function OneCanal({ of }: { of: CanalRecord }) {
  const { length } = of
  const rests = length && words.record.restsOn(words.lengthState(length.state), methodsOf(length.rests_on))
  const sizes = [
    of.planned_size && words.record.planned(of.planned_size),
    of.largest_at_length && words.record.largest(of.largest_at_length),
  ]
  return (
    <>
      <p class="row apart">
        <b>{of.canal}</b>
        <span>{of.state ? words.chair.state[of.state] : words.record.notBegun}</span>
        <span class="number">{length?.stop_mm == null ? words.record.noLength : mm(length.stop_mm)}</span>
      </p>
      <p class="small">
        {[rests || of.length_problem, of.reference_point].filter(Boolean).join(' · ')}
        <br />
        {sizes.filter(Boolean).join(' · ')}
      </p>
      {of.charted && <p class="small soft">{words.capital(of.charted)}</p>}
      <Work of={of} />
    </>
  )
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
