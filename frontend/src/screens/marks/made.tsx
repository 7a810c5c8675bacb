import type { MarkingShown } from '@/api/shapes'
import { tenth } from '@/parts/millimetres'
import { words } from '@/words/en'
import { draftOf } from './draft-of'
import type { Marks } from './use-marks'

type LineMeasured = MarkingShown['measured']['lines'][number]

/** What was marked on the image before, the latest first, with what it measures and how it differs from the one it corrects. */
export function Made({ caseId, markings, marks }: { caseId: string; markings: readonly MarkingShown[]; marks: Marks }) {
  if (markings.length === 0) return null
  return (
    <section class="stack">
      <h2>{words.marks.made}</h2>
      <ul class="marks-made">
        {[...markings].reverse().map((one) => (
          <li key={one.id}>
            <MarkedSays one={one} markings={markings} />
            <div class="row wrap">
              {one.readings.length > 0 && (
                <a class="button plain" href={`/cases/${caseId}/plan`}>
                  {words.marks.inThePlan}
                </a>
              )}
              <button type="button" class="button plain" onClick={() => marks.begin(draftOf(one))}>
                {words.marks.beginFrom(one.number)}
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** One marking: whose it is, what its scale rests on, what it measures. */
export function MarkedSays({ one, markings }: { one: MarkingShown; markings: readonly MarkingShown[] }) {
  const corrected = markings.find(({ id }) => id === one.corrects)
  return (
    <>
      <p>
        <b>{words.marks.by(one.number, one.made_by.name, words.when(one.at))}</b>
        {corrected && ` · ${words.marks.corrects(corrected.number)}`}
      </p>
      <p class="small soft">{one.measured.scale.says}</p>
      <ul>
        {one.measured.lines.map((line) => (
          <li key={line.canal}>{saysOf(line, one, corrected)}</li>
        ))}
      </ul>
    </>
  )
}

function saysOf(line: LineMeasured, one: MarkingShown, corrected: MarkingShown | undefined): string {
  const { length_mm: length, bend, tip_short_mm: tip } = line
  const before = corrected?.measured.lines.find(({ canal }) => canal === line.canal)?.length_mm
  return [
    length
      ? `${line.canal} ${words.marks.between(tenth(length.value), tenth(length.least), tenth(length.most ?? 0))}`
      : line.canal,
    length && before && differs(length.value, before.value) && words.marks.longerBy(length.value - before.value),
    tip && words.marks.tipShort(tenth(Math.abs(tip.value)), tip.value >= 0),
    bend && words.marks.angle(Math.round(bend.schneider_deg.value)),
    one.readings.includes(line.canal) && words.marks.taken,
  ]
    .filter(Boolean)
    .join(' · ')
}

/** By as much as is told, a tenth of a millimetre. */
const differs = (a_mm: number, b_mm: number) => tenth(Math.abs(a_mm - b_mm)) !== tenth(0)
