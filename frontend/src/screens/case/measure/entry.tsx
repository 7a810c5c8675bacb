import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { CanalShown, CaseShown } from '@/api/shapes'
import { MethodFields, type NumberEntered } from '@/panels/readings/method-fields'
import {
  emptyFields,
  lacking,
  type Method,
  type MmField,
  numbersOf,
  QUANTITY,
  type ReadingFields,
  toJunction,
  toReading,
  wrongNumber,
} from '@/panels/readings/reading-fields'
import { Tick } from '@/parts/fields'
import { type Key, Keypad, pressed } from '@/parts/keypad/keypad'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { refreshCase, useTooth } from '@/store/cache/cases'
import { useDraft } from '@/store/cache/hooks'
import type { PendingReading } from '@/store/device/schema'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { takeReading } from '@/store/outbox/pending-readings'
import { send as sendWaiting } from '@/store/outbox/sender'
import { mm, readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import { Agreement } from './agreement'

/** What is kept from canal to canal. */
export type Chosen = Pick<ReadingFields, 'method' | 'mark' | 'after_flaring'>

interface Props {
  of: CaseShown
  canal: CanalShown
  pending: readonly PendingReading[]
  methods: readonly Method[]
  chosen: Chosen
  onChosen: (chosen: Chosen) => void
  /** What the button says that keeps the reading and goes on. */
  says: string
  /** While it is written nothing else is taken. */
  during: <T>(written: Promise<T>) => Promise<T>
  onKept: (goesOn: boolean, onPhone: boolean) => void
}

const FIELDS = [...Object.keys(QUANTITY), 'tip_short_mm', 'mark', 'method', 'after_flaring']

/** What is typed of the reading, with what is kept from canal to canal, and giving it to the server. */
function useReading({ of, canal, methods, chosen, onChosen, during, onKept }: Props) {
  const method = methods.includes(chosen.method) ? chosen.method : (methods[0] ?? 'pre_operative_image')
  const first = (kept: Chosen) => ({ ...emptyFields(uuid7(), kept.method), ...kept })
  const draft = useDraft(`reading of ${canal.id}`, () => first({ ...chosen, method }))
  const [sending, run] = useSending(() => {
    draft.set({ id: uuid7() })
    void refreshCase(of.id)
  })
  const fields = draft.fields.value
  const keeps = { method: fields.method, mark: fields.mark, after_flaring: fields.after_flaring }
  // What an earlier visit left, or what this canal cannot be measured by, was not chosen here.
  useLayoutEffect(() => onChosen(keeps), [keeps.method, keeps.mark, keeps.after_flaring])
  const send = (goesOn: boolean) =>
    run(async () => {
      const taken =
        fields.method === 'junction'
          ? { junction: toJunction(fields, canal.length?.stop_mm) }
          : { reading: toReading(fields, canal.reference_point) }
      const how = await during(takeReading(of.id, { canal: canal.id, id: fields.id, ...taken }))
      if (how === 'kept') void sendWaiting()
      await draft.clear(first(keeps))
      onKept(goesOn, how === 'kept')
    })
  const anew = () => void draft.clear(first({ ...chosen, method }))
  return { fields, set: draft.set, restored: draft.restored.value, anew, sending, send }
}

/** One reading of one canal: how it was taken, its numbers by keys, and how it agrees with the others. */
export function Entry(props: Props) {
  const { of, canal, pending, methods, says } = props
  const reading = useReading(props)
  const { fields, sending } = reading
  const form = useRef<HTMLFormElement>(null)
  const [tried, setTried] = useState(false)
  const [asked, setAsked] = useState<string>()
  const [active, setActive] = useState<MmField>()
  const numbers = numbersOf(fields)
  const into = active && numbers.includes(active) ? active : numbers[0]
  const lacks = lacking(fields)
  const further = into && !lacks.includes(into) ? numbers.find((field) => lacks.includes(field)) : undefined
  const unusual = useUnusual(of, fields)
  const busy = sending.state === 'busy'
  const wrong = (field: keyof ReadingFields) =>
    tried && lacks.includes(field) ? wrongOf(fields, field) : sending.problem?.at(field)
  const set = (change: Partial<ReadingFields>) => {
    setAsked(undefined)
    if (change.method) setTried(false)
    reading.set(change)
  }
  const focusOn = (field: string | undefined) =>
    form.current?.querySelector<HTMLElement>(`[data-field="${field}"]`)?.focus()
  // A number is due at once: whoever has a keyboard types it. After a reading was kept the next begins with its first.
  useLayoutEffect(() => {
    setTried(false)
    setActive(undefined)
    focusOn(numbers[0])
  }, [fields.method, fields.id])
  const keep = (goesOn: boolean) => {
    if (busy) return
    if (further) return focusOn(further)
    setTried(true)
    if (lacks.length > 0) return focusOn(lacks[0])
    if (unusual && asked !== unusual) return setAsked(unusual)
    setAsked(undefined)
    void reading.send(goesOn)
  }
  return (
    <form
      ref={form}
      class="measure-form"
      aria-label={words.chart.addReading}
      onSubmit={(event) => {
        event.preventDefault()
        keep(true)
      }}
    >
      <div class="measure-reading">
        {reading.restored && <Notice action={{ says: words.throwAway, onDo: reading.anew }}>{words.restored}</Notice>}
        <Methods methods={methods} value={fields.method} onChoose={(method) => set({ method })} />
        <MethodFields
          fields={fields}
          set={set}
          wrong={wrong}
          begins={0}
          entered={(number) => (
            <NumberField {...number} on={number.field === into} onFocus={() => setActive(number.field)} />
          )}
        />
        {asked ? (
          <div ref={intoView}>
            <Notice sign="caution">{asked}</Notice>
          </div>
        ) : (
          <Agreement of={of} canal={canal} pending={pending} fields={fields} />
        )}
        {fields.method !== 'junction' && fields.method !== 'pre_operative_image' && (
          <Tick
            label={words.reading.afterFlaring}
            checked={fields.after_flaring}
            onChange={(after_flaring) => set({ after_flaring })}
          />
        )}
        <Sent sending={sending} fields={FIELDS} again={() => void reading.send(true)} />
      </div>
      <Keypad
        onKey={(key: Key) => into && set({ [into]: pressed(fields[into], key) })}
        stays={
          <button type="button" class="button" disabled={busy} onClick={() => keep(false)}>
            {words.measure.keep}
          </button>
        }
        goesOn={
          <button type="submit" class="button main" disabled={busy}>
            {busy ? words.reading.busy : further ? words.measure.number : asked ? words.measure.allTheSame(says) : says}
          </button>
        }
      />
    </form>
  )
}

const intoView = (element: HTMLElement | null) => element?.scrollIntoView?.({ block: 'nearest' })

const wrongOf = (fields: ReadingFields, field: keyof ReadingFields) =>
  field in QUANTITY ? wrongNumber(fields, field as MmField) : words.required

/** What is asked before an unusual number is kept; nothing of a training block, which is no tooth. */
function useUnusual(of: CaseShown, fields: ReadingFields): string | undefined {
  const usual = useTooth(of.tooth.iso).value?.lengths.find((length) => length.root === null)
  if (of.setting === 'block' || usual?.low_mm == null || usual.high_mm === null) return undefined
  const { low_mm, high_mm } = usual
  const lengths = numbersOf(fields).filter((field) => QUANTITY[field] === 'length')
  const odd = lengths.map((field) => readMm(fields[field]) ?? low_mm).find((value) => value < low_mm || high_mm < value)
  return odd === undefined ? undefined : words.measure.unusual(mm(odd), mm(low_mm), mm(high_mm))
}

interface MethodsProps {
  methods: readonly Method[]
  value: Method
  onChoose: (method: Method) => void
}

/** How it was taken, each in sight. */
function Methods({ methods, value, onChoose }: MethodsProps) {
  return (
    <fieldset class="measure-methods">
      <legend class="unseen">{words.reading.method}</legend>
      {methods.map((method) => (
        <label key={method}>
          <input
            type="radio"
            name="measured-by"
            checked={method === value}
            aria-label={words.reading.short[method]}
            onChange={() => onChoose(method)}
          />
          {words.measure.chips[method]}
        </label>
      ))}
    </fieldset>
  )
}

type NumberProps = NumberEntered & { on: boolean; onFocus: () => void }

/** A number to type by the keys below; the phone's own keyboard stays away. */
function NumberField({ field, label, value, wrong, on, onInput, onFocus }: NumberProps) {
  return (
    <label class="measure-number" data-on={on}>
      <span class="grow small">
        {label}
        {wrong && (
          <span class="wrong block" role="alert">
            {wrong}
          </span>
        )}
      </span>
      <span class="row">
        <input
          inputMode="none"
          autoComplete="off"
          enterKeyHint="next"
          data-field={field}
          value={value}
          aria-invalid={wrong !== undefined}
          onInput={(event) => onInput(event.currentTarget.value)}
          onFocus={onFocus}
        />
        <span class="soft">mm</span>
      </span>
    </label>
  )
}
