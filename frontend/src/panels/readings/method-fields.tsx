import { BOUNDS } from '@/parts/bounds'
import { Choice, Stepper, Tick } from '@/parts/fields'
import { words } from '@/words/en'
import { type MmField, QUANTITY, type ReadingFields } from './reading-fields'

interface Props {
  fields: ReadingFields
  set: (change: Partial<ReadingFields>) => void
  wrong: (field: keyof ReadingFields) => string | undefined
  /** Where stepping begins: the estimate, or the length so far. */
  begins: number
  /** What a number is entered in; without it one with two buttons to step. */
  entered?: (number: NumberEntered) => preact.JSX.Element
}

export interface NumberEntered {
  field: MmField
  label: string
  value: string
  wrong: string | undefined
  onInput: (value: string) => void
}

const r = words.reading

/** The fields that belong to the method that was chosen. */
export function MethodFields(props: Props) {
  switch (props.fields.method) {
    case 'pre_operative_image':
      return <Mm {...props} field="tooth_mm" label={r.tooth} />
    case 'ratio':
      return (
        <>
          <Mm {...props} field="instrument_mm" label={r.instrument} />
          <Mm {...props} field="instrument_on_image_mm" label={r.instrumentOnImage} />
          <Mm {...props} field="tooth_on_image_mm" label={r.toothOnImage} />
        </>
      )
    case 'confirming_image':
      return <Confirming {...props} />
    case 'apex_locator':
      return <Locator {...props} />
    case 'direct_sight':
      return <Mm {...props} field="seen_mm" label={r.seen} />
    case 'junction':
      return <Junction {...props} />
  }
}

type MmProps = Props & { field: MmField; label: string }

function Mm({ fields, set, wrong, begins, field, label, entered }: MmProps) {
  const number = {
    label,
    value: fields[field],
    wrong: wrong(field),
    onInput: (value: string) => set({ [field]: value }),
  }
  return entered?.({ field, ...number }) ?? <Stepper {...number} {...BOUNDS[QUANTITY[field]]} begins={begins} />
}

function Confirming(props: Props) {
  const { fields, set, wrong } = props
  return (
    <>
      <Mm {...props} field="set_mm" label={r.set} />
      <Choice
        label={r.tip}
        value={fields.tip || undefined}
        wrong={wrong('tip')}
        options={(['short', 'at', 'past'] as const).map((value) => ({ value, says: r.tips[value] ?? value }))}
        onChoose={(tip) => set({ tip })}
      />
      {(fields.tip === 'short' || fields.tip === 'past') && (
        <Mm
          {...props}
          begins={0.5}
          field="tip_by_mm"
          label={r.by}
          wrong={(f) => wrong(f) ?? wrong('tip_short_mm' as 'tip')}
        />
      )}
    </>
  )
}

function Locator(props: Props) {
  const { fields, set, wrong } = props
  return (
    <>
      <Choice
        label={r.mark}
        value={fields.mark || undefined}
        wrong={wrong('mark')}
        options={(['apex', 'constriction'] as const).map((value) => ({ value, says: r.marks[value] ?? value }))}
        onChoose={(mark) => set({ mark })}
      />
      <Mm {...props} field="read_mm" label={r.read} />
      <Mm {...props} field="repeat_mm" label={r.repeat} />
      <Tick label={r.stable} checked={fields.stable} onChange={(stable) => set({ stable })} />
    </>
  )
}

const JUNCTION_METHODS = ['cone_mark', 'two_instruments', 'image_estimate'] as const

function Junction(props: Props) {
  const { fields, set, wrong } = props
  return (
    <>
      <Mm {...props} begins={3} field="from_terminus_mm" label={r.junctionFrom} />
      <Choice
        label={r.junctionMethod}
        value={fields.junction_method || undefined}
        wrong={wrong('junction_method')}
        hint={fields.junction_method === 'image_estimate' ? r.guess : undefined}
        options={JUNCTION_METHODS.map((value) => ({ value, says: r.junctionMethods[value] ?? value }))}
        onChoose={(junction_method) => set({ junction_method })}
        down
      />
    </>
  )
}
