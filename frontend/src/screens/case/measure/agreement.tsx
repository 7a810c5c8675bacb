import type { CanalShown, CaseShown } from '@/api/shapes'
import { lacking, type ReadingFields, toothBy, toReading } from '@/panels/readings/reading-fields'
import { apart, ReadingRuler, type RulerReading } from '@/parts/reading-ruler/reading-ruler'
import { useTooth } from '@/store/cache/cases'
import type { PendingReading } from '@/store/device/schema'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

interface Props {
  of: CaseShown
  canal: CanalShown
  pending: readonly PendingReading[]
  fields: ReadingFields
}

/** The canal's readings and the one being typed, drawn beside what is usual, and how far they lie apart. */
export function Agreement({ of, canal, pending, fields }: Props) {
  const usual = useTooth(of.tooth.iso).value?.lengths.find((length) => length.root === null)
  const range =
    of.setting !== 'block' && usual?.low_mm != null && usual.high_mm !== null
      ? { low_mm: usual.low_mm, high_mm: usual.high_mm }
      : undefined
  const taken = [...canal.readings.filter(({ struck }) => !struck), ...pending].flatMap(({ reading }) => reading ?? [])
  const typed = fields.method !== 'junction' && lacking(fields).length === 0 ? toReading(fields, '') : undefined
  const readings: RulerReading[] = [
    ...taken.map((reading) => ({ says: words.measure.chips[reading.method], mm: toothBy(reading) })),
    ...(typed ? [{ says: words.measure.chips[typed.method], mm: toothBy(typed), typed: true }] : []),
  ]
  const by = apart(readings)
  return (
    <div class="measure-agreement">
      <ReadingRuler readings={readings} usual={range} />
      <p class="small" role="status">
        {readings.length === 0 && words.measure.first}
        {readings.map(({ says, mm: length_mm }) => `${says} ${mm(length_mm)}`).join(' · ')}
        {by !== undefined && <b> · {words.measure.apart(by)}</b>}
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
