import { useId } from 'preact/hooks'
import { readMm } from '@/units/millimetres'
import { words } from '@/words/en'

interface FieldProps {
  label: string
  hint?: preact.ComponentChildren
  wrong?: string | undefined
}

interface TextProps extends FieldProps {
  value: string
  onInput: (value: string) => void
  name?: string
  type?: 'text' | 'password' | 'date'
  autoComplete?: string
  rows?: number
  maxLength?: number
  inputMode?: 'numeric' | 'decimal'
  readOnly?: boolean
}

/** One line, or several with `rows`. */
export function TextField({ label, hint, wrong, value, onInput, rows, type = 'text', ...rest }: TextProps) {
  const id = useId()
  const shared = { id, class: 'input', value, 'aria-invalid': wrong !== undefined, 'aria-describedby': `${id}-more` }
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {rows ? (
        <textarea {...shared} {...rest} rows={rows} onInput={(event) => onInput(event.currentTarget.value)} />
      ) : type === 'password' ? (
        <input {...shared} {...rest} type="password" onInput={(event) => onInput(event.currentTarget.value)} />
      ) : type === 'date' ? (
        <input {...shared} {...rest} type="date" onInput={(event) => onInput(event.currentTarget.value)} />
      ) : (
        <input {...shared} {...rest} type="text" onInput={(event) => onInput(event.currentTarget.value)} />
      )}
      <More id={id} hint={hint} wrong={wrong} />
    </div>
  )
}

function More({ id, hint, wrong }: Pick<FieldProps, 'hint' | 'wrong'> & { id: string }) {
  return (
    <div id={`${id}-more`}>
      {wrong && (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
      {hint && <p class="hint">{hint}</p>}
    </div>
  )
}

interface ChoiceProps<T extends string> extends FieldProps {
  options: readonly { value: T; says: preact.ComponentChildren; off?: boolean }[]
  value: T | undefined
  onChoose: (value: T) => void
  down?: boolean
}

/** One of a few, all in sight. */
export function Choice<T extends string>({ label, hint, wrong, options, value, onChoose, down }: ChoiceProps<T>) {
  const id = useId()
  return (
    <fieldset class="field" aria-describedby={`${id}-more`}>
      <legend>{label}</legend>
      <div class={down ? 'choice down' : 'choice'}>
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={option.value === value}
              disabled={option.off ?? false}
              onChange={() => onChoose(option.value)}
            />
            {option.says}
          </label>
        ))}
      </div>
      <More id={id} hint={hint} wrong={wrong} />
    </fieldset>
  )
}

interface SelectProps extends FieldProps {
  options: readonly { value: string; says: string }[]
  value: string
  onChoose: (value: string) => void
}

/** One of many. */
export function Select({ label, hint, wrong, options, value, onChoose }: SelectProps) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        class="input"
        value={value}
        onChange={(event) => onChoose(event.currentTarget.value)}
        aria-invalid={wrong !== undefined}
        aria-describedby={`${id}-more`}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.says}
          </option>
        ))}
      </select>
      <More id={id} hint={hint} wrong={wrong} />
    </div>
  )
}

export function Tick({
  label,
  checked,
  onChange,
}: {
  label: string
  checked: boolean
  onChange: (on: boolean) => void
}) {
  return (
    <label class="tick">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  )
}

interface StepperProps extends FieldProps {
  /** As typed; the phone keeps what was typed, also while it is no number. */
  value: string
  onInput: (value: string) => void
  step?: number
  /** Where stepping begins from an empty field. */
  begins?: number
  unit?: string
  /** Stepping goes no further than these. */
  least?: number
  most?: number
}

/** A number in steps by two big buttons, or typed with a decimal comma or point. It starts empty. */
export function Stepper(props: StepperProps) {
  const { label, hint, wrong, value, onInput, step = 0.5, begins = 20, unit = 'mm', least = 0, most = 999 } = props
  const id = useId()
  const by = (direction: -1 | 1) => {
    const now = readMm(value)
    const next = now === undefined ? begins : Math.round((now + direction * step) * 100) / 100
    const within = Math.min(most, Math.max(least, next))
    onInput(step < 1 ? within.toFixed(1) : String(within))
  }
  return (
    <div class="field">
      <label for={id}>
        {label} {unit && <span class="soft">({unit})</span>}
      </label>
      <div class="stepper">
        <button type="button" class="button" aria-label={words.fields.less(label, step)} onClick={() => by(-1)}>
          −
        </button>
        <input
          id={id}
          class="input"
          inputMode="decimal"
          autoComplete="off"
          value={value}
          onInput={(event) => onInput(event.currentTarget.value)}
          aria-invalid={wrong !== undefined}
          aria-describedby={`${id}-more`}
        />
        <button type="button" class="button" aria-label={words.fields.more(label, step)} onClick={() => by(1)}>
          +
        </button>
      </div>
      <More id={id} hint={hint} wrong={wrong} />
    </div>
  )
}
