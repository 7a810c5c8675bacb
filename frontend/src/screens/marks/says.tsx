import type { CanalShown, ImageShown, Scale } from '@/api/shapes'
import type { Within } from '@/marks/sure'
import { type Draft, EMPTY, hasMarks, lineOf } from '@/panels/marks/draft'
import { columnsOf, intervalsOf, saidOf } from '@/panels/marks/measured'
import type { Unit } from '@/panels/marks/unit'
import { Notice } from '@/parts/notice'
import { useDraft } from '@/store/cache/hooks'
import { readMm, tenth } from '@/units/millimetres'
import { words } from '@/words/en'

/** What every length on the image rests on, and by how much that alone may be off. */
export function ScaleSays({ unit, draft, file }: { unit: Unit; draft: Draft; file: Scale | undefined }) {
  const { figures, share, fault, byKnown } = unit
  const { what, lengthMm } = draft.known
  if (fault && figures) return <Notice sign="stop">{words.marks.fault[fault](figures)}</Notice>
  return (
    <p class="small soft">
      {byKnown
        ? words.marks.scaleKnown(words.marks.known[what], tenth(readMm(lengthMm) ?? 0))
        : (file?.says ?? words.marks.scaleNone)}{' '}
      {share !== undefined &&
        figures &&
        words.marks.scaleOff(100 * figures.interval_share, 100 * figures.reach * share)}
    </p>
  )
}

interface Props {
  draft: Draft
  canal: string
  canals: readonly CanalShown[]
  unit: Unit
}

/** What the marks of a canal come to at once, and how sure each number is. */
export function LineSays({ draft, canal, canals, unit }: Props) {
  const line = lineOf(draft, canal)
  if (line.points.length < 2) return null
  const said = saidOf(line, unit)
  const within = intervalsOf(line, unit)
  const { figures } = unit
  const tooLong = figures && (said.lengthMm ?? 0) > figures.length_most_mm
  const astray = within.tipDeeperMm && Math.sign(within.tipDeeperMm[0]) === Math.sign(within.tipDeeperMm[1])
  return (
    <>
      <dl class="line-says">
        <Row of={words.marks.row.length} value={said.lengthMm} within={within.lengthMm} says={tenth} unit="mm" main />
        <Row of={words.marks.row.angle} value={said.angleDeg} within={within.angleDeg} says={whole} unit="°" />
        <SideRow of={words.marks.row.short} value={said.tipShortMm} within={within.tipShortMm} />
        <SideRow of={words.marks.row.deeper} value={said.tipDeeperMm} within={within.tipDeeperMm} />
      </dl>
      {figures && within.lengthMm && <p class="small soft">{words.marks.ends(100 * figures.interval_share)}</p>}
      {said.lengthMm === undefined && <p>{ratioOf(draft, canal, canals, unit) ?? words.marks.noScale}</p>}
      {tooLong && <Notice sign="stop">{words.marks.tooLong(figures.length_most_mm)}</Notice>}
      {astray && said.tipDeeperMm !== undefined && (
        <Notice sign="caution">{words.marks.astray(tenth(Math.abs(said.tipDeeperMm)), said.tipDeeperMm > 0)}</Notice>
      )}
    </>
  )
}

const whole = (deg: number) => deg.toFixed(0)

interface RowProps {
  of: string
  value: number | undefined
  within: Within | undefined
  says: (value: number) => string
  unit: string
  main?: boolean
}

function Row({ of, value, within, says, unit, main }: RowProps) {
  if (value === undefined) return null
  return (
    <div data-row={of}>
      <dt>{of}</dt>
      <dd class={main ? 'number strong' : 'number'}>
        {says(value)} {unit}
      </dd>
      <dd class="number soft">{within && `${says(within[0])} – ${says(within[1])}`}</dd>
    </div>
  )
}

/** A distance to one side or the other: the name says to which, the numbers are counted towards it. */
function SideRow({
  of,
  value,
  within,
}: {
  of: readonly [string, string]
  value: number | undefined
  within: Within | undefined
}) {
  if (value === undefined) return null
  const other = value < 0
  const ends: Within | undefined = within && (other ? [-within[1], -within[0]] : within)
  return <Row of={of[other ? 1 : 0]} value={Math.abs(value)} within={ends} says={tenth} unit="mm" />
}

/** Without a scale a canal is only longer or shorter than another one. */
function ratioOf(draft: Draft, canal: string, canals: readonly CanalShown[], unit: Unit): string | undefined {
  const mine = columnsOf(lineOf(draft, canal), unit)
  const other = canals.find(({ name }) => name !== canal && columnsOf(lineOf(draft, name), unit))
  const theirs = other && columnsOf(lineOf(draft, other.name), unit)
  return mine && theirs ? words.marks.ratio(mine / theirs, other.name) : undefined
}

const says = words.images.putRight

export const draftName = (imageId: string) => `marks on ${imageId}`

/** Said over the marks of an image that somebody struck, or put to another canal, while it is marked or before. */
export function PutRightUnderHand({ image }: { image: ImageShown | undefined }) {
  // An answer that was kept from before images could be put right says nothing of it.
  const last = image?.put_right?.at(-1)
  if (!last) return null
  const by = words.images.remove.by(last.by.name, words.when(last.at))
  return last.struck ? (
    <Notice sign="stop">{words.marks.struck(says.why[last.why] ?? '', by)}</Notice>
  ) : (
    <Notice sign="caution">{words.marks.moved(last.canal || says.tooth, last.moved_to || says.tooth, by)}</Notice>
  )
}

/** Said where an image was removed and marks on it were not kept yet. */
export function RemovedUnderHand({ imageId }: { imageId: string }) {
  const { draft } = useDraft(draftName(imageId), () => ({ draft: EMPTY })).fields.value
  return hasMarks(draft) ? <Notice sign="stop">{words.marks.removed}</Notice> : null
}
