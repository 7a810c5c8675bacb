import type { CanalShown } from '@/api/shapes'
import { lineOf, SCALE } from '@/panels/marks/draft'
import { saidOf } from '@/panels/marks/measured'
import type { Unit } from '@/panels/marks/unit'
import type { Marks } from '@/panels/marks/use-marks'
import { tenth } from '@/units/millimetres'
import { words } from '@/words/en'

interface Props {
  marks: Marks
  canals: readonly CanalShown[]
  unit: Unit
}

/** What can be marked: the scale and every canal, each with what it comes to. */
export function LineChips({ marks, canals, unit }: Props) {
  const scale = unit.columnMm === undefined ? words.marks.none : unit.byKnown ? words.marks.marked : words.marks.ofFile
  return (
    <nav class="canal-strip" aria-label={words.marks.canBeMarked}>
      <Chip marks={marks} of={SCALE} name={words.marks.scale} says={scale} />
      {canals.map(({ name }) => {
        const { lengthMm, angleDeg } = saidOf(lineOf(marks.draft, name), unit)
        const says = [lengthMm && tenth(lengthMm), angleDeg && `${Math.round(angleDeg)}°`].filter(Boolean).join(' · ')
        const begun = lineOf(marks.draft, name).points.length > 0
        return (
          <Chip
            key={name}
            marks={marks}
            of={name}
            name={name}
            says={says || (begun ? words.marks.begun : words.marks.none)}
          />
        )
      })}
    </nav>
  )
}

function Chip({ marks, of, name, says }: { marks: Marks; of: string; name: string; says: string }) {
  return (
    <button type="button" aria-pressed={marks.active === of} onClick={() => marks.turn(of)}>
      <b>{name}</b>
      <span class="small">{says}</span>
    </button>
  )
}
