import type { CanalPlan, Strain, WallLeft } from '@/api/shapes'
import { Known } from '@/parts/known'
import { Why } from '@/parts/rationale/why'
import { Sign } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import './canal-figures.css'
import { Filling } from './filling'

/** What else follows from the plan of a canal: irrigant, wall that is left, strain in its curve, cone and filling. */
export function CanalFigures({ canal }: { canal: CanalPlan }) {
  return (
    <>
      {canal.irrigants.length > 0 && (
        <section class="stack close">
          <h3>{words.figures.irrigant}</h3>
          <ul>
            {canal.irrigants.map(({ irrigant, volume_ml }, i) => (
              <li key={irrigant} class="figure-line">
                <span class="grow">{words.irrigant(irrigant)}</span>
                <Why
                  canal={canal.canal}
                  of={`irrigants.${i}.volume_ml`}
                  title={words.irrigant(irrigant)}
                  value={`${volume_ml} mL`}
                />
              </li>
            ))}
          </ul>
        </section>
      )}
      {canal.wall && <Wall canal={canal.canal} wall={canal.wall} />}
      {canal.strain.length > 0 && <Strains canal={canal.canal} strain={canal.strain} />}
      {canal.obturation && <Filling canal={canal.canal} obturation={canal.obturation} />}
    </>
  )
}

function Wall({ canal, wall }: { canal: string; wall: WallLeft }) {
  const lines = [
    ['before_mm', words.figures.before, wall.before_mm],
    ['centred_mm', words.figures.centred, wall.centred_mm],
    ['worst_mm', words.figures.worst, wall.worst_mm],
  ] as const
  return (
    <section class="stack close">
      <h3>{words.figures.wall(mm(wall.from_end_mm))}</h3>
      <ul>
        {lines.map(([field, label, value_mm]) => (
          <li key={field} class="figure-line">
            <span class="grow">{label}</span>
            <Why canal={canal} of={`wall.${field}`} title={label} value={`${mm(value_mm)} mm`} />
          </li>
        ))}
      </ul>
      <p class="small soft">{wall.measured ? words.figures.measured : wall.source}</p>
      {!wall.measured && <Known know={wall.know} />}
    </section>
  )
}

const SIGNS = { low: 'note', medium: 'caution', high: 'stop' } as const

function Strains({ canal, strain }: { canal: string; strain: readonly Strain[] }) {
  const taken = strain.find((bent) => bent.taken)
  return (
    <section class="stack close">
      <h3>{words.figures.strain}</h3>
      <ul>
        {strain.map(({ instrument, strain_pct, strain_class }, i) => (
          <li key={instrument} class="figure-line">
            <span class="grow number">{instrument}</span>
            <span class="small">
              <Sign name={SIGNS[strain_class]} /> {words.figures.classes[strain_class]}
            </span>
            <Why
              canal={canal}
              of={`strain.${i}.strain_pct`}
              title={words.figures.strainOf(instrument)}
              value={words.size.percent(strain_pct)}
            />
          </li>
        ))}
      </ul>
      {taken?.radius_mm != null && <p class="small">{words.figures.curveTaken(mm(taken.radius_mm))}</p>}
      <p class="small soft">{words.figures.strainSays}</p>
    </section>
  )
}
