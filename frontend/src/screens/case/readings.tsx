import type { CanalShown } from '@/api/shapes'
import { mm } from '@/parts/millimetres'
import { words } from '@/words/en'
import '@/parts/list.css'

/** All readings of a canal with what each says, whether it counts, and why. */
export function Readings({ canal }: { canal: CanalShown }) {
  return (
    <section class="stack close">
      <h2>{words.chart.readings}</h2>
      {canal.readings.length + canal.junctions.length === 0 && <p class="soft">{words.chart.noReadings}</p>}
      <ul class="ledger">
        {canal.length?.readings.map((result, i) => (
          <li key={canal.readings[i]?.id ?? i} class="figure">
            <p class="row apart">
              <b>{words.reading.short[result.method] ?? result.method}</b>
              <span class="number">{result.working_length_mm === null ? '–' : mm(result.working_length_mm)}</span>
            </p>
            <p class="small soft">
              {result.counts ? words.chart.counts : words.chart.countsNot}: {result.why}
            </p>
          </li>
        ))}
        {canal.junctions.map(({ id, junction }) => (
          <li key={id} class="figure">
            <p class="row apart">
              <b>{words.reading.short.junction}</b>
              <span class="number">{mm(junction.from_terminus_mm)}</span>
            </p>
            <p class="small soft">{words.reading.junctionMethods[junction.method]}</p>
          </li>
        ))}
      </ul>
    </section>
  )
}
