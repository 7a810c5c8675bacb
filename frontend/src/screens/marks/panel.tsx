import type { CanalShown, Scale } from '@/api/shapes'
import { type KnownWhat, lineOf, type Role } from '@/panels/marks/draft'
import type { Unit } from '@/panels/marks/unit'
import type { Marks } from '@/panels/marks/use-marks'
import { BOUNDS, wrongOf } from '@/parts/bounds'
import { Choice, Stepper } from '@/parts/fields'
import { readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import { LineSays, ScaleSays } from './says'

interface Props {
  marks: Marks
  canals: readonly CanalShown[]
  unit: Unit
  scale: Scale | undefined
}

/** What to mark next, what the mark that is picked stands for, and what comes out. */
export function Panel({ marks, canals, unit, scale }: Props) {
  const canal = canals.find(({ name }) => name === marks.active)
  return (
    <div class="marks-panel stack">
      <p class="marks-hint" role="status">
        {hintOf(marks, canal)}
      </p>
      {canal ? (
        <OfCanal marks={marks} canal={canal} canals={canals} unit={unit} scale={scale} />
      ) : (
        <OfScale marks={marks} unit={unit} scale={scale} />
      )}
    </div>
  )
}

function hintOf(marks: Marks, canal: CanalShown | undefined): string {
  if (!canal) return words.marks.hint.scale[marks.draft.known.points.length ? 'more' : 'first']
  if (marks.tip) return words.marks.hint.tip
  const line = lineOf(marks.draft, canal.name)
  const { length } = line.points
  if (length === 0) return words.marks.hint.reference(canal.reference_point)
  if (length === 1) return words.marks.hint.orifice
  return line.leaves === null ? words.marks.hint.along : words.marks.hint.end
}

const ROLES: readonly Role[] = ['orifice', 'leaves', 'straightAgain']

function OfCanal({ marks, canal, canals, unit, scale }: Props & { canal: CanalShown }) {
  const line = lineOf(marks.draft, canal.name)
  const { picked } = marks
  // What a mark stands for may be said as soon as it is set; further ones come after it.
  const inner = picked !== undefined && picked > 0
  return (
    <>
      {inner && (
        <fieldset class="marks-roles">
          <legend>{words.marks.thisIs}</legend>
          {ROLES.map((role) => (
            <button
              key={role}
              type="button"
              class="button"
              aria-pressed={line[role] === picked}
              onClick={() => marks.role(role)}
            >
              {words.marks.role[role]}
            </button>
          ))}
        </fieldset>
      )}
      <LineSays draft={marks.draft} canal={canal.name} canals={canals} unit={unit} />
      <ScaleSays unit={unit} draft={marks.draft} file={scale} />
      <details open={marks.tip || line.tip !== null}>
        <summary>{words.marks.instrumentIn}</summary>
        <div class="stack">
          <button type="button" class="button" aria-pressed={marks.tip} onClick={marks.markTip}>
            {words.marks.markTip}
          </button>
          <Stepper
            label={words.marks.setAt}
            value={line.setMm}
            onInput={(setMm) => marks.line({ setMm })}
            wrong={line.setMm.trim() ? wrongOf('length', line.setMm) : undefined}
            {...BOUNDS.length}
            hint={words.marks.setAtHint}
          />
          <button type="button" class="button" disabled={!line.tip || !readMm(line.setMm)} onClick={marks.asScale}>
            {words.marks.asScale}
          </button>
        </div>
      </details>
    </>
  )
}

const KINDS: readonly KnownWhat[] = ['instrument', 'ruler', 'ball']

function OfScale({ marks, unit, scale }: Omit<Props, 'canals'>) {
  const { known } = marks.draft
  return (
    <>
      <Choice
        label={words.marks.knownWhat}
        options={KINDS.map((value) => ({ value, says: words.marks.known[value] }))}
        value={known.what}
        onChoose={(what) => marks.known({ what })}
      />
      <Stepper
        label={words.marks.knownLength[known.what]}
        value={known.lengthMm}
        onInput={(lengthMm) => marks.known({ lengthMm })}
      />
      <ScaleSays unit={unit} draft={marks.draft} file={scale} />
      {scale && unit.byKnown && (
        <p class="small soft">
          {words.marks.fileSays} {scale.says} {scale.do}
        </p>
      )}
    </>
  )
}
