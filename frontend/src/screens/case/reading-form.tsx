import { useState } from 'preact/hooks'
import type { CanalShown, Setting } from '@/api/shapes'
import { MethodFields } from '@/panels/readings/method-fields'
import {
  emptyFields,
  lacking,
  type Method,
  type MmField,
  QUANTITY,
  type ReadingFields,
  toJunction,
  toReading,
  wrongNumber,
} from '@/panels/readings/reading-fields'
import { Select, Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { address } from '@/router'
import { refreshCase } from '@/store/cache/cases'
import { useDraft } from '@/store/cache/hooks'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { takeReading } from '@/store/outbox/pending-readings'
import { send as sendWaiting } from '@/store/outbox/sender'
import { words } from '@/words/en'

interface Props {
  canal: CanalShown
  caseId: string
  setting: Setting
  /** The canal joins another: where it does can be read too. */
  joins: boolean
}

const METHODS: readonly Method[] = ['pre_operative_image', 'ratio', 'confirming_image', 'apex_locator', 'direct_sight']
const FIELDS = [
  'tooth_mm',
  'instrument_mm',
  'instrument_on_image_mm',
  'tooth_on_image_mm',
  'set_mm',
  'tip_short_mm',
  'read_mm',
  'repeat_mm',
  'mark',
  'seen_mm',
  'from_terminus_mm',
  'method',
] as const

/** A further reading of the canal: method first, then its numbers in big steps or typed. */
export function ReadingForm({ canal, caseId, setting, joins }: Props) {
  const first = () => emptyFields(uuid7(), nextMethod(canal, setting))
  const draft = useDraft(`reading of ${canal.id}`, first)
  const [sending, run] = useSending(() => {
    draft.set({ id: uuid7() })
    void refreshCase(caseId)
  })
  const [tried, setTried] = useState(false)
  const [kept, setKept] = useState<'sent' | 'kept'>()
  const fields = draft.fields.value
  const lacks = tried ? lacking(fields) : []
  const wrong = (field: keyof ReadingFields) =>
    lacks.includes(field) ? says(fields, field) : sending.problem?.at(field)
  const set = (change: Partial<ReadingFields>) => {
    setKept(undefined)
    draft.set(change)
  }
  const send = () =>
    run(async () => {
      const taken =
        fields.method === 'junction'
          ? { junction: toJunction(fields, canal.length?.stop_mm) }
          : { reading: toReading(fields, canal.reference_point) }
      const how = await takeReading(caseId, { canal: canal.id, id: fields.id, ...taken })
      if (how === 'kept') void sendWaiting()
      await draft.clear(emptyFields(uuid7(), follows(fields.method)))
      setTried(false)
      setKept(how)
    })
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (lacking(fields).length === 0) void send()
  }
  const methods: readonly Method[] = joins ? [...METHODS, 'junction'] : METHODS
  return (
    <form class="card stack" onSubmit={submit} aria-label={words.chart.addReading}>
      <h2>{words.chart.addReading}</h2>
      {draft.restored.value && (
        <Notice action={{ says: words.throwAway, onDo: () => void draft.clear(first()) }}>{words.restored}</Notice>
      )}
      <Select
        label={words.reading.method}
        value={fields.method}
        options={methods.map((value) => ({ value, says: words.reading.short[value] ?? value }))}
        onChoose={(method) => set({ method: method as Method })}
      />
      <MethodFields
        fields={fields}
        set={set}
        wrong={wrong}
        begins={canal.length?.stop_mm ?? canal.length?.estimate_mm ?? 20}
      />
      {fields.method !== 'junction' && fields.method !== 'pre_operative_image' && (
        <Tick
          label={words.reading.afterFlaring}
          checked={fields.after_flaring}
          onChange={(after_flaring) => set({ after_flaring })}
        />
      )}
      <Sent sending={sending} fields={FIELDS} again={() => void send()} />
      {kept === 'sent' && <Notice sign="approved">{words.reading.kept}</Notice>}
      {kept === 'kept' && <Notice sign="waiting">{words.phone.keptReading}</Notice>}
      <button type="submit" class="button main" disabled={sending.state === 'busy'}>
        {sending.state === 'busy' ? words.reading.busy : words.reading.save}
      </button>
    </form>
  )
}

const says = (fields: ReadingFields, field: keyof ReadingFields) =>
  isNumber(field) ? wrongNumber(fields, field) : words.required

const isNumber = (field: keyof ReadingFields): field is MmField => field in QUANTITY

/** After the image before treatment comes the confirming one; other methods are often taken again. */
const follows = (method: Method): Method => (method === 'pre_operative_image' ? 'confirming_image' : method)

/** What is usually taken next: an image before treatment, then the confirming one; in a block the end is seen. */
function nextMethod(canal: CanalShown, setting: Setting): Method {
  if (address.value.endsWith('method=junction')) return 'junction'
  if (setting === 'block') return 'direct_sight'
  return canal.readings.length === 0 ? 'pre_operative_image' : 'confirming_image'
}
