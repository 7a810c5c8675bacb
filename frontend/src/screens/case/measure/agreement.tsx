import type { CanalShown, CaseShown, Reading } from '@/api/shapes'
import { lacking, type ReadingFields, toothBy, toReading } from '@/panels/readings/reading-fields'
import { apart, ReadingRuler, type RulerReading } from '@/parts/reading-ruler/reading-ruler'
import { useLengthFigures, useTooth } from '@/store/cache/cases'
import type { PendingReading } from '@/store/device/schema'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { bandOf, lengthBy } from './length-by'

interface Props {
  of: CaseShown
  canal: CanalShown
  pending: readonly PendingReading[]
  fields: ReadingFields
}

/**
 * The lengths that the canal's readings give and the one being typed would give, drawn beside what is usual and where a
 * reading agrees with those there are.
 */
export function Agreement({ of, canal, pending, fields }: Props) {
  const figures = useLengthFigures(of.programme_id).value
  const usual = useTooth(of.tooth.iso).value?.lengths.find((length) => length.root === null)
  const range =
    of.setting !== 'block' && usual?.low_mm != null && usual.high_mm !== null
      ? { low_mm: usual.low_mm, high_mm: usual.high_mm }
      : undefined
  const taken = [...canal.readings.filter(({ struck }) => !struck), ...pending].flatMap(({ reading }) => reading ?? [])
  const typed =
    fields.method !== 'junction' && lacking(fields).length === 0 ? toReading(fields, canal.reference_point) : undefined
  const lengthOf = (reading: Reading) => figures && lengthBy(reading, figures, of, canal)
  const at = (reading: Reading) => lengthOf(reading) ?? toothBy(reading)
  const readings: RulerReading[] = [
    ...taken.map((reading) => ({ says: words.measure.chips[reading.method], mm: at(reading) })),
    ...(typed ? [{ says: words.measure.chips[typed.method], mm: at(typed), typed: true }] : []),
  ]
  const by = apart(readings)
  const counted = taken.flatMap((reading) => {
    const length_mm = lengthOf(reading)
    return length_mm === undefined ? [] : { reading, length_mm }
  })
  const agrees = figures && bandOf(counted, fields.after_flaring, figures)
  const saysOf = ({ says, mm: length_mm, typed: isTyped }: RulerReading) =>
    words.measure.gives(says, isTyped && typed ? mm(toothBy(typed)) : undefined, mm(length_mm))
  return (
    <div class="measure-agreement">
      <ReadingRuler readings={readings} usual={range} agrees={agrees} />
      <p class="small" role="status">
        {readings.length === 0 && words.measure.first}
        {readings.map(saysOf).join(' · ')}
        {by !== undefined && <b> · {words.measure.apart(by)}</b>}
        {agrees && ` · ${words.measure.agrees(mm(agrees.low_mm), mm(agrees.high_mm))}`}
        {range && <span class="soft"> · {words.measure.usual(mm(range.low_mm), mm(range.high_mm))}</span>}
      </p>
      {canal.length?.state === 'settled' ? (
        <p class="small strong">{words.lengthState('settled')}</p>
      ) : (
        taken.length > 0 && <p class="small">{canal.length?.what_to_do ?? canal.length_problem}</p>
      )}
    </div>
  )
}
