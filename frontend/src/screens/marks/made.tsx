import type { MarkingShown } from '@/api/shapes'
import { tenth } from '@/parts/millimetres'
import { words } from '@/words/en'
import { type Draft, EMPTY, EMPTY_LINE, type LineDraft } from './draft'
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
    length && before && words.marks.longerBy(length.value - before.value),
    tip && words.marks.tipShort(tenth(Math.abs(tip.value)), tip.value >= 0),
    bend && words.marks.angle(Math.round(bend.schneider_deg.value)),
    one.readings.includes(line.canal) && words.marks.taken,
  ]
    .filter(Boolean)
    .join(' · ')
}

/** Marks that were kept, to go on from. */
function draftOf({ marks: { lines, known } }: MarkingShown): Draft {
  const spot = ({ x_px, y_px }: { x_px: number; y_px: number }) => ({ x: x_px, y: y_px })
  const drafts = lines.map((line): [string, LineDraft] => [
    line.canal,
    {
      ...EMPTY_LINE,
      points: line.points.map(spot),
      orifice: line.orifice,
      leaves: line.leaves,
      straightAgain: line.straight_again,
      tip: line.tip && spot(line.tip),
      setMm: line.set_mm === null ? '' : String(line.set_mm),
    },
  ])
  return {
    lines: Object.fromEntries(drafts),
    known: known
      ? { what: known.what, lengthMm: String(known.length_mm), points: known.points.map(spot) }
      : EMPTY.known,
  }
}
