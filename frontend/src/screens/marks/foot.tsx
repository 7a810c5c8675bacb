import { useState } from 'preact/hooks'
import type { CanalShown, CaseShown, MarkingsShown } from '@/api/shapes'
import { type Draft, EMPTY, type LineDraft, lineOf } from '@/panels/marks/draft'
import { marksOf, takenBefore } from '@/panels/marks/draft-of'
import { saidOf } from '@/panels/marks/measured'
import type { Unit } from '@/panels/marks/unit'
import type { Marks } from '@/panels/marks/use-marks'
import { Tick } from '@/parts/fields'
import type { Size } from '@/parts/image-board/view'
import { Notice } from '@/parts/notice'
import { useWorks } from '@/store/chair/chair'
import { dropMarking, keepMarking, sendMarkings, waitingMarkings } from '@/store/images/markings'
import type { Draft as Kept } from '@/store/session/drafts'
import { personId } from '@/store/session/session'
import { mm, readMm, tenth } from '@/units/millimetres'
import { words } from '@/words/en'
import { asksOf } from './asks'
import { Made } from './made'

interface Props {
  of: CaseShown
  imageId: string
  /** No length is taken from it any more. */
  struck: boolean
  size: Size
  marks: Marks
  canals: readonly CanalShown[]
  unit: Unit
  markings: MarkingsShown | undefined
  kept: Kept<{ draft: Draft }>
}

/** Which lengths are taken from the marks, and keeping them; below, what was marked before. */
export function Foot({ of, imageId, struck, size, marks, canals, unit, markings, kept }: Props) {
  // What is taken unless somebody says otherwise, turned over for these.
  const [turned, setTurned] = useState<readonly string[]>([])
  const [sure, setSure] = useState<readonly string[]>([])
  const imageMarks = marksOf(marks.draft, canals)
  const last = markings?.markings.at(-1)
  const corrects = last && last.made_by.id !== personId() ? last.id : null
  const works = useWorks(of.id)
  // A supervisor judges an image that somebody marked; measuring anew is for who works the case.
  const able = (!struck && (works || corrects !== null) ? imageMarks.lines : [])
    .filter(({ canal, reference_point, tip, set_mm }) => {
      const said = saidOf(lineOf(marks.draft, canal), unit)
      const confirms = tip !== null && set_mm !== null && said.tipShortMm !== undefined
      const fits = (said.lengthMm ?? 0) <= (unit.figures?.length_most_mm ?? Number.POSITIVE_INFINITY)
      return reference_point !== '' && fits && (said.lengthMm !== undefined || confirms)
    })
    .map(({ canal }) => canal)
  const again = able.filter((canal) => takenBefore(marks.draft, canal, markings?.markings ?? []))
  const take = able.filter((canal) => turned.includes(canal) === again.includes(canal))
  const asked = imageMarks.lines
    .map(({ canal }) => canal)
    .filter((canal) => asksOf(marks.draft, canal, unit, size).length > 0)
  const open = asked.filter((canal) => !sure.includes(canal))
  const keep = async () => {
    await keepMarking(of.id, imageId, { marks: imageMarks, take: [...take], corrects_id: corrects, note: '' })
    await kept.clear({ draft: EMPTY })
  }
  const noPoint = imageMarks.lines.filter(({ reference_point }) => reference_point === '').map(({ canal }) => canal)
  return (
    <div class="stack">
      {able.map((canal) => (
        <Tick
          key={canal}
          label={labelOf(lineOf(marks.draft, canal), canal, unit)}
          checked={take.includes(canal)}
          onChange={() =>
            setTurned(turned.includes(canal) ? turned.filter((each) => each !== canal) : [...turned, canal])
          }
        />
      ))}
      {noPoint.length > 0 && <Notice sign="note">{words.marks.noReferencePoint(noPoint.join(', '))}</Notice>}
      {asked.map((canal) => (
        <Tick
          key={canal}
          label={words.marks.soItIs(canal)}
          checked={sure.includes(canal)}
          onChange={() => setSure(sure.includes(canal) ? sure.filter((each) => each !== canal) : [...sure, canal])}
        />
      ))}
      <button
        type="button"
        class="button main"
        disabled={imageMarks.lines.length === 0 || open.length > 0}
        onClick={() => void keep()}
      >
        {words.marks.keep}
      </button>
      {waitingMarkings()
        .value.filter((marking) => marking.imageId === imageId)
        .map((marking) =>
          marking.refused === undefined ? (
            <Notice key={marking.id} sign="waiting">
              {words.marks.waits}
            </Notice>
          ) : (
            <Notice
              key={marking.id}
              sign="stop"
              action={{ says: words.tryAgain, onDo: () => void sendMarkings(marking.id) }}
            >
              {words.marks.refused} {marking.refused}
              <button type="button" class="button plain" onClick={() => void dropMarking(marking.id)}>
                {words.marks.throwAway}
              </button>
            </Notice>
          ),
        )}
      {markings && <Made caseId={of.id} markings={markings.markings} marks={marks} />}
    </div>
  )
}

/** What is taken: the stop with the tip's place where an instrument stands in the canal, else the length. */
function labelOf(line: LineDraft, canal: string, unit: Unit): string {
  const { lengthMm = 0, tipShortMm } = saidOf(line, unit)
  const set_mm = readMm(line.setMm)
  if (set_mm === undefined || tipShortMm === undefined) return words.marks.take(canal, tenth(lengthMm))
  return words.marks.takeTip(canal, mm(set_mm), tenth(Math.abs(tipShortMm)), tipShortMm >= 0)
}
