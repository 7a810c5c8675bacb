import { words } from '@/words/en'
import './keypad.css'

export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '½' | '⌫'

// Row by row; the last two places of the last row are the form's own.
const ROWS: readonly (readonly Key[])[] = [
  ['1', '2', '3', '⌫'],
  ['4', '5', '6', '½'],
  ['7', '8', '9'],
]
const LAST: readonly Key[] = ['.', '0']
const WHOLE_DIGITS = 3
const DECIMALS = 2

/** What is typed after a key: a half is a digit like any other, and goes away as one. */
export function pressed(typed: string, key: Key): string {
  const [whole = '', decimals] = typed.replace(',', '.').split('.')
  if (key === '⌫') return decimals !== undefined && decimals.length <= 1 ? whole : typed.slice(0, -1)
  if (key === '½') return decimals ? typed : `${whole || '0'}.5`
  if (key === '.') return decimals === undefined ? `${whole || '0'}.` : typed
  const full = decimals === undefined ? whole.length >= WHOLE_DIGITS : decimals.length >= DECIMALS
  return full ? typed : `${typed}${key}`
}

interface Props {
  onKey: (key: Key) => void
  /** What keeps the number and stays, and what keeps it and goes on: the place at the right below. */
  stays: preact.ComponentChildren
  goesOn: preact.ComponentChildren
}

/** Digits for a thumb, in the place of the phone's own keyboard. Whoever has a keyboard types into the field itself. */
export function Keypad({ onKey, stays, goesOn }: Props) {
  const key = (each: Key) => (
    <button
      key={each}
      type="button"
      class="button"
      tabIndex={-1}
      data-at-once
      aria-label={words.keypad.says(each)}
      // The field keeps the focus: what is typed goes there, by whichever keys.
      onPointerDown={(event) => event.preventDefault()}
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => onKey(each)}
    >
      {each}
    </button>
  )
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for what is sent
    <div class="keypad" role="group" aria-label={words.keypad.name}>
      {ROWS.flat().map(key)}
      {stays}
      {LAST.map(key)}
      {goesOn}
    </div>
  )
}
