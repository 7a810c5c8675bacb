import { signal } from '@preact/signals'
import { personId } from './session'

const NAME = 'fourth-canal-contact-times'

/** Since when the irrigant of a step is in, by the phone's clock, each under its person, case, canal and step. */
type Since = Readonly<Record<string, number>>

// Small, and wanted at once when the app comes back: hence not from the database.
const since = signal<Since>(remembered())

function remembered(): Since {
  try {
    return JSON.parse(globalThis.localStorage?.getItem(NAME) ?? '{}') as Since
  } catch {
    return {}
  }
}

const keyOf = (...place: readonly string[]) => JSON.stringify([personId(), ...place])

/** Seconds that the irrigant of this step has been in; undefined where the time was not started. */
export function contact_s(place: readonly string[], now: number): number | undefined {
  const from = since.value[keyOf(...place)]
  return from === undefined ? undefined : Math.max(0, Math.round((now - from) / 1000))
}

export function startContact(place: readonly string[], now: number = Date.now()): void {
  keep({ ...since.value, [keyOf(...place)]: now })
}

export function endContact(place: readonly string[]): void {
  const { [keyOf(...place)]: _, ...rest } = since.value
  keep(rest)
}

function keep(value: Since): void {
  since.value = value
  localStorage.setItem(NAME, JSON.stringify(value))
}
