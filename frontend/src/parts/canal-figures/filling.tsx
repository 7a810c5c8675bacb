import type { Obturation } from '@/api/shapes'
import { Why } from '@/parts/rationale/why'
import { Sign } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

/** Which cone fits, where cones, pluggers and spreaders rest, and how much has to be filled. */
export function Filling({ canal, obturation }: { canal: string; obturation: Obturation }) {
  const { master_cone, rests, volumes } = obturation
  const filled = [
    ['before_mm3', words.figures.initialShape, volumes.before_mm3],
    ['prepared_mm3', words.figures.prepared, volumes.prepared_mm3],
    ['cone_mm3', words.figures.cone, volumes.cone_mm3],
    ['to_fill_mm3', words.figures.toFill, volumes.to_fill_mm3],
  ] as const
  return (
    <section class="stack close">
      <h3>{words.figures.filling}</h3>
      <p class="strong">{master_cone === null ? words.figures.noCone : words.figures.masterCone(master_cone)}</p>
      <ul>
        {rests.map((rest, i) => rest.fits && <Rests key={rest.kind + rest.name} canal={canal} rest={rest} at={i} />)}
        {filled.map(
          ([field, label, value_mm3]) =>
            value_mm3 !== null && (
              <li key={field} class="figure-line">
                <span class="grow">{label}</span>
                <Why
                  canal={canal}
                  of={`obturation.volumes.${field}`}
                  title={label}
                  value={words.figures.volume(value_mm3)}
                />
              </li>
            ),
        )}
      </ul>
      {rests.some((rest) => !rest.fits) && (
        <details>
          <summary>{words.figures.others}</summary>
          <ul>
            {rests.map(
              (rest, i) => !rest.fits && <Rests key={rest.kind + rest.name} canal={canal} rest={rest} at={i} />,
            )}
          </ul>
        </details>
      )}
    </section>
  )
}

interface RestsProps {
  canal: string
  rest: Obturation['rests'][number]
  /** Its place in the plan. */
  at: number
}

function Rests({ canal, rest, at }: RestsProps) {
  return (
    <li>
      <p class="figure-line">
        <span class="grow">
          {words.figures.kind(rest.kind)} <span class="number">{rest.name}</span>
        </span>
        <Why
          canal={canal}
          of={`obturation.rests.${at}.rests_mm`}
          title={words.figures.restOf(rest.kind, rest.name)}
          value={rest.short_mm < 0 ? words.figures.passesEnd : words.figures.restsAt(mm(rest.rests_mm))}
        />
      </p>
      <p class="small soft">
        <Sign name={rest.fits ? 'approved' : 'note'} /> {rest.says}
      </p>
    </li>
  )
}
