import { type Signal, signal } from '@preact/signals'
import { Refused, Unreachable } from '@/api/problem'
import { read, write } from './database'
import { personId } from './session'
import { onHeard, tellTabs } from './tabs'

export interface Kept<T> {
  readonly value?: T
  /** When the value came from the server, by this phone's clock. */
  readonly at?: number
  /** `asking` while nothing or an older copy is shown; `offline` and `failed` keep showing what there is. */
  readonly state: 'asking' | 'fresh' | 'offline' | 'failed'
  readonly problem?: Refused
}

interface Shelf {
  readonly signal: Signal<Kept<unknown>>
  /** Counts askings and answers put in place: an answer to an older asking is dropped. */
  turn: number
}

const shelves = new Map<string, Shelf>()

const keyOf = (person: string, name: string) => JSON.stringify([person, name])

function shelfOf(person: string, name: string): Shelf {
  const key = keyOf(person, name)
  const found = shelves.get(key) ?? { signal: signal<Kept<unknown>>({ state: 'asking' }), turn: 0 }
  shelves.set(key, found)
  return found
}

/** The signal of a thing by its name, for the person who is signed in; the same one wherever it is asked for. */
export function keptSignal<T>(name: string): Signal<Kept<T>> {
  return shelfOf(personId(), name).signal as Signal<Kept<T>>
}

/** Shows the copy on the phone at once, then asks the server and keeps what it answers. */
export async function refresh<T>(name: string, ask: () => Promise<T>): Promise<void> {
  const person = personId()
  const shelf = shelfOf(person, name)
  shelf.turn += 1
  const { turn } = shelf
  if (shelf.signal.value.value === undefined) {
    const copy = await read('kept', person, name).catch(() => undefined)
    if (copy && shelf.turn === turn) shelf.signal.value = { value: copy.value, at: copy.at, state: 'asking' }
  }
  try {
    const value = await ask()
    if (shelf.turn === turn) await put(shelf, person, name, value)
  } catch (error) {
    const failed = failure(error)
    if (shelf.turn === turn) shelf.signal.value = { ...shelf.signal.value, ...failed }
  }
}

/** Puts an answer of the server in place, in memory and on the phone. */
export async function replace<T>(name: string, value: T): Promise<void> {
  const person = personId()
  const shelf = shelfOf(person, name)
  shelf.turn += 1
  await put(shelf, person, name, value)
}

/** Puts an answer of the server to this person on the screen; the caller keeps it on the phone. */
export function show(person: string, name: string, value: unknown): void {
  const shelf = shelfOf(person, name)
  shelf.turn += 1
  shelf.signal.value = { value, at: Date.now(), state: 'fresh' }
}

async function put(shelf: Shelf, person: string, name: string, value: unknown): Promise<void> {
  shelf.signal.value = { value, at: Date.now(), state: 'fresh' }
  // A full or forbidden store must not keep the answer from the screen.
  await write('kept', person, name, value)
    .then(() => tellTabs({ kind: 'kept', person, name }))
    .catch(() => undefined)
}

// Another tab has heard from the server.
onHeard('kept', async ({ person, name }) => {
  const shelf = shelves.get(keyOf(person, name))
  if (!shelf) return
  const { turn } = shelf
  const copy = await read('kept', person, name)
  const { at = 0 } = shelf.signal.value
  if (!copy || shelf.turn !== turn || copy.at < at) return
  shelf.turn += 1
  shelf.signal.value = { value: copy.value, at: copy.at, state: 'fresh' }
})

function failure(error: unknown): Pick<Kept<unknown>, 'state' | 'problem'> {
  if (error instanceof Unreachable) return { state: 'offline' }
  if (error instanceof Refused) return { state: 'failed', problem: error }
  throw error
}
