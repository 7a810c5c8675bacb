import { type Signal, signal } from '@preact/signals'
import { Refused, Unreachable } from '@/api/problem'
import { read, write } from './database'
import { personId } from './session'

export interface Kept<T> {
  readonly value?: T
  /** When the value came from the server, by this phone's clock. */
  readonly at?: number
  /** `asking` while nothing or an older copy is shown; `offline` and `failed` keep showing what there is. */
  readonly state: 'asking' | 'fresh' | 'offline' | 'failed'
  readonly problem?: Refused
}

const signals = new Map<string, Signal<Kept<unknown>>>()

/** The signal of a thing by its name, for the person who is signed in; the same one wherever it is asked for. */
export function keptSignal<T>(name: string): Signal<Kept<T>> {
  const key = JSON.stringify([personId(), name])
  const found = signals.get(key) ?? signal<Kept<unknown>>({ state: 'asking' })
  signals.set(key, found)
  return found as Signal<Kept<T>>
}

/** Shows the copy on the phone at once, then asks the server and keeps what it answers. */
export async function refresh<T>(name: string, ask: () => Promise<T>): Promise<void> {
  const kept = keptSignal<T>(name)
  const person = personId()
  if (kept.value.value === undefined) {
    const copy = await read('kept', person, name).catch(() => undefined)
    if (copy && kept.value.value === undefined) kept.value = { value: copy.value as T, at: copy.at, state: 'asking' }
  }
  try {
    await replace(name, await ask())
  } catch (error) {
    kept.value = { ...kept.value, ...failure(error) }
  }
}

/** Puts an answer of the server in place, in memory and on the phone. */
export async function replace<T>(name: string, value: T): Promise<void> {
  keptSignal<T>(name).value = { value, at: Date.now(), state: 'fresh' }
  // A full or forbidden store must not keep the answer from the screen.
  await write('kept', personId(), name, value).catch(() => undefined)
}

function failure(error: unknown): Pick<Kept<unknown>, 'state' | 'problem'> {
  if (error instanceof Unreachable) return { state: 'offline' }
  if (error instanceof Refused) return { state: 'failed', problem: error }
  throw error
}
