import type { CanalPlan, StopRow } from '@/api/shapes'
import { InstrumentLabel } from '@/parts/instrument'
import { needlePath, stopPath } from '@/parts/rationale/paths'
import { TouchHint, Why } from '@/parts/rationale/why'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './stop-table.css'

interface Props {
  rows: readonly StopRow[]
  canals: readonly CanalPlan[]
}

/** Instruments in order of use by canal, the stop of each in millimetres, and how deep the needle may go. */
export function StopTable({ rows, canals }: Props) {
  return (
    <div class="stop-table-room">
      <table class="stop-table" data-canals={canals.length}>
        <caption class="unseen">{words.stops.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.stops.instrument}</th>
            {canals.map((c) => (
              <th scope="col" key={c.canal}>
                {c.canal}
              </th>
            ))}
          </tr>
        </thead>
        {grouped(rows).map((group, i, all) => (
          <Group key={`${i}${group.phase}`} group={group} canals={canals} before={all[i - 1]} />
        ))}
        <NeedleRows canals={canals} />
      </table>
      <p class="legend small soft">
        <b class="to-length">{words.stops.legendLength}</b>{' '}
        <span class="to-resistance">{words.stops.legendResistance}</span>
      </p>
      <TouchHint />
    </div>
  )
}

interface GroupProps {
  group: StopGroup
  canals: readonly CanalPlan[]
  /** The group above: what it has already said is not said twice. */
  before: StopGroup | undefined
}

function Group({ group, canals, before }: GroupProps) {
  const goesOn = before?.phase === group.phase
  const stops = group.rows[0]?.stops ?? []
  const toLength = stops.filter((s) => s.target === 'to_length').map((s) => s.canal)
  const resistance = toLength.length < stops.length
  const turnsToLength = goesOn && !resistance && (before?.rows[0]?.stops.some((s) => s.target !== 'to_length') ?? false)
  return (
    <tbody>
      {(!goesOn || resistance || turnsToLength) && (
        <tr class="phase">
          <th scope="rowgroup" colSpan={canals.length + 1}>
            {!goesOn && <span class="phase-name">{words.phase(group.phase)} </span>}
            {resistance ? (
              <span class="to-resistance-word">{words.stops.toResistance}</span>
            ) : (
              turnsToLength && words.stops.legendLength
            )}
            {resistance && toLength.length > 0 && words.stops.butToLength(toLength)}
          </th>
        </tr>
      )}
      {group.rows.map((row, i) => (
        <tr key={row.instrument.key}>
          <th scope="row">
            <InstrumentLabel name={row.instrument.name} colour={row.instrument.colour} />
          </th>
          {i === 0 &&
            canals.map((c) => {
              const stop = row.stops.find((s) => s.canal === c.canal)
              return (
                <td key={c.canal} rowSpan={group.rows.length} class={stop?.target.replace('_', '-')}>
                  {stop ? (
                    <Why
                      canal={c.canal}
                      of={stop.why || stopPath(c, stop.stop_mm)}
                      title={words.rationale.stop(group.rows.map((row) => row.instrument.name).join(', '))}
                      value={mm(stop.stop_mm)}
                    />
                  ) : (
                    <Unused />
                  )}
                </td>
              )
            })}
        </tr>
      ))}
    </tbody>
  )
}

const Unused = () => (
  <>
    <span aria-hidden="true">·</span>
    <span class="unseen">{words.stops.none}</span>
  </>
)

function NeedleRows({ canals }: { canals: readonly CanalPlan[] }) {
  if (!canals.some((c) => c.needle)) return null
  const after = [...new Set(canals.flatMap((c) => c.needle?.now.map((n) => n.after) ?? []))]
  return (
    <tbody class="needle" data-drawn="needle">
      <tr>
        <th scope="row">{words.stops.needleCeiling}</th>
        {canals.map((c) => (
          <td key={c.canal} class="to-length">
            {c.needle ? (
              <Why
                canal={c.canal}
                of="needle.ceiling_mm"
                title={words.rationale.needle}
                value={mm(c.needle.ceiling_mm)}
              />
            ) : (
              <Unused />
            )}
          </td>
        ))}
      </tr>
      <tr class="phase">
        <th scope="rowgroup" colSpan={canals.length + 1}>
          {words.stops.needleNow}
        </th>
      </tr>
      <tr>
        <th scope="row" class="after">
          {words.stops.atFirst}
        </th>
        {canals.map((c) => (
          <td key={c.canal}>
            <Begins of={c} />
          </td>
        ))}
      </tr>
      {after.map((instrument) => (
        <tr key={instrument}>
          <th scope="row" class="after">
            {words.stops.after(instrument)}
          </th>
          {canals.map((c) => {
            const at = c.needle?.now.findIndex((n) => n.after === instrument) ?? -1
            const now = c.needle?.now[at]
            return (
              <td key={c.canal}>
                {now ? (
                  <Why
                    canal={c.canal}
                    of={needlePath(at)}
                    title={words.rationale.needleNow(instrument)}
                    value={mm(now.at_most_mm)}
                  />
                ) : (
                  <Unused />
                )}
              </td>
            )
          })}
        </tr>
      ))}
    </tbody>
  )
}

/** How deep the needle may go before anything has been in the canal; older plans say nothing of it. */
function Begins({ of }: { of: CanalPlan }) {
  const at = of.needle?.begins_mm ?? null
  if (at === null) return <Unused />
  return <Why canal={of.canal} of="needle.begins_mm" title={words.rationale.needleBegins} value={mm(at)} />
}

interface StopGroup {
  readonly phase: string
  readonly rows: readonly StopRow[]
}

/** Rows that follow each other in one phase with the same stops, together: their numbers are written once. */
export function grouped(rows: readonly StopRow[]): StopGroup[] {
  const groups: { phase: string; rows: StopRow[] }[] = []
  for (const row of rows) {
    const last = groups.at(-1)
    const like = last?.rows[0]
    if (last && like && last.phase === row.phase && sameStops(like, row)) last.rows.push(row)
    else groups.push({ phase: row.phase, rows: [row] })
  }
  return groups
}

function sameStops(a: StopRow, b: StopRow): boolean {
  return (
    a.stops.length === b.stops.length &&
    a.stops.every((s) => b.stops.some((t) => t.canal === s.canal && t.stop_mm === s.stop_mm && t.target === s.target))
  )
}
