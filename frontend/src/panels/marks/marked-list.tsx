import type { MarkingShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { useImages } from '@/store/images/images'
import { tenth } from '@/units/millimetres'
import { words } from '@/words/en'
import { endsApartMm } from './two-markings'

type LineMeasured = MarkingShown['measured']['lines'][number]

interface ListProps {
  caseId: string
  markings: readonly MarkingShown[]
  /** What can be done with each. */
  below?: (marking: MarkingShown) => preact.ComponentChildren
}

/** Every marking of an image, the latest first. */
export function MarkedList({ caseId, markings, below }: ListProps) {
  const percent = usePercent(caseId)
  return (
    <ul class="marks-made">
      {[...markings].reverse().map((marking) => (
        <li key={marking.id}>
          <MarkedSays marking={marking} markings={markings} percent={percent} />
          {below?.(marking)}
        </li>
      ))}
    </ul>
  )
}

/** Of how many cases in a hundred an interval holds the true value; undefined before the server was reached. */
export function usePercent(caseId: string): number | undefined {
  const share = useImages(caseId).value?.marking.interval_share
  return share && 100 * share
}

interface SaysProps {
  marking: MarkingShown
  markings: readonly MarkingShown[]
  percent: number | undefined
}

/** One marking: whose it is, what its scale rests on, what it measures. */
function MarkedSays({ marking, markings, percent }: SaysProps) {
  const corrected = markings.find(({ id }) => id === marking.corrects_id)
  return (
    <>
      <p>
        <b>{words.marks.by(marking.number, marking.made_by.name, words.when(marking.at))}</b>
        {corrected && ` · ${words.marks.corrects(corrected.number)}`}
      </p>
      <p class="small soft">
        {marking.measured.scale.says} {marking.measured.touch_says}
      </p>
      <ul>
        {marking.measured.lines.map((line) => (
          <li key={line.canal}>
            {saysOf(line, marking, corrected, percent)}
            {line.bend?.caution && <Notice sign="caution">{line.bend.caution}</Notice>}
            {(line.doubts ?? []).map(({ point, kind }) => (
              <Notice key={point} sign="caution">
                {words.marks.ask[kind](point + 1)}
              </Notice>
            ))}
          </li>
        ))}
      </ul>
    </>
  )
}

function saysOf(
  line: LineMeasured,
  marking: MarkingShown,
  corrected: MarkingShown | undefined,
  percent: number | undefined,
): string {
  const { length_mm: length, bend, tip_short_mm: tip } = line
  const apart = corrected && endsApartMm(marking, corrected, line.canal)
  const before = corrected?.measured.lines.find(({ canal }) => canal === line.canal)?.length_mm
  return [
    length
      ? `${line.canal} ${words.marks.between(percent, tenth(length.value), tenth(length.least), tenth(length.most ?? 0))}`
      : line.canal,
    length && before && differs(length.value, before.value) && words.marks.longerBy(length.value - before.value),
    apart !== undefined && differs(apart, 0) && words.marks.endsApart(tenth(apart)),
    tip && words.marks.tipShort(tenth(Math.abs(tip.value)), tip.value >= 0),
    bend && words.marks.angle(Math.round(bend.schneider_deg.value)),
    bend?.radius_mm && words.marks.radius(tenth(bend.radius_mm.value)),
    marking.readings.includes(line.canal) && words.marks.taken,
  ]
    .filter(Boolean)
    .join(' · ')
}

/** By as much as is told, a tenth of a millimetre. */
const differs = (a_mm: number, b_mm: number) => tenth(Math.abs(a_mm - b_mm)) !== tenth(0)
