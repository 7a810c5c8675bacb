import type { CanalShown, JunctionShown, ReadingShown } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { Strike } from './strike'
import '@/parts/list.css'

interface Props {
  canal: CanalShown
  caseId: string
}

/** All readings of a canal with what each says, whether it counts, and why; those that were mistakes stay, struck. */
export function Readings({ canal, caseId }: Props) {
  const counting = canal.readings.filter(({ struck }) => !struck)
  const struck = [...canal.readings, ...canal.junctions].filter((reading) => reading.struck)
  // Whoever charts may: the student of the case, and any supervisor.
  const strikes = membership.value?.role !== 'coordinator'
  return (
    <section class="stack close">
      <h2>{words.chart.readings}</h2>
      {canal.readings.length + canal.junctions.length === 0 && <p class="soft">{words.chart.noReadings}</p>}
      <ul class="ledger">
        {canal.length?.readings.map((result, i) => {
          const id = counting[i]?.id
          return (
            <li key={id ?? i} class="figure">
              <p class="row apart">
                <b>{words.reading.short[result.method] ?? result.method}</b>
                <span class="number">{result.working_length_mm === null ? '–' : mm(result.working_length_mm)}</span>
              </p>
              <p class="small soft">
                {result.counts ? words.chart.counts : words.chart.countsNot}: {result.why}
              </p>
              {id && strikes && <Strike caseId={caseId} kind="readings" id={id} />}
            </li>
          )
        })}
        {/* Readings that cannot be right together come to no length: each can be struck all the same. */}
        {!canal.length &&
          counting.map(({ id, reading }) => (
            <li key={id} class="figure">
              <b>{words.reading.short[reading.method] ?? reading.method}</b>
              {strikes && <Strike caseId={caseId} kind="readings" id={id} />}
            </li>
          ))}
        {canal.junctions
          .filter((reading) => !reading.struck)
          .map(({ id, junction }) => (
            <li key={id} class="figure">
              <p class="row apart">
                <b>{words.reading.short.junction}</b>
                <span class="number">{mm(junction.from_terminus_mm)}</span>
              </p>
              <p class="small soft">{words.reading.junctionMethods[junction.method]}</p>
              {strikes && <Strike caseId={caseId} kind="junctions" id={id} />}
            </li>
          ))}
        {struck.map((reading) => (
          <li key={reading.id} class="figure">
            <del>{readSays(reading)}</del>
            <p class="small soft">
              {reading.struck &&
                words.struck.by(
                  reading.struck.by.name,
                  words.record.at(reading.struck.at),
                  words.struck.why[reading.struck.why],
                )}
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** What was read, in a few words. */
function readSays(taken: ReadingShown | JunctionShown): string {
  if ('junction' in taken) return `${words.reading.short.junction} ${mm(taken.junction.from_terminus_mm)}`
  const { reading } = taken
  const read = Object.entries(reading).find(([name, value]) => name.endsWith('_mm') && typeof value === 'number')
  return [words.reading.short[reading.method] ?? reading.method, read && mm(Number(read[1]))].filter(Boolean).join(' ')
}
