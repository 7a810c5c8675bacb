import { effect, type Signal, signal } from '@preact/signals'
import { Refused, Unreachable } from '@/api/problem'
import { read, write } from '@/store/device/database'
import { onTabMessage, postToTabs } from '@/store/device/tabs'
import { personId, signIns } from '@/store/session/session'

export interface Cached<T> {
  readonly value?: T
  /** When the value was asked for, by this phone's clock: whatever happened before is in it. */
  readonly at?: number
  /** `asking` while nothing or an older copy is shown; `offline` and `failed` keep showing what there is. */
  readonly state: 'asking' | 'fresh' | 'offline' | 'failed'
  readonly problem?: Refused
}

/** How an asking went. */
export type Went = 'answered' | 'no answer' | 'refused' | 'signed out'

export interface Asking {
  readonly turn: number
  readonly at: number
  /** Settled once the server has answered, or will not. */
  readonly over: Promise<Went>
  /** Settled once the answer is on the phone too. */
  readonly kept: Promise<void>
}

interface Shelf {
  readonly person: string
  readonly name: string
  readonly signal: Signal<Cached<unknown>>
  /** Numbers askings and answers put in place, in their order. */
  turn: number
  /** The number of what is shown: only an answer that was asked for later takes its place. */
  shown: number
  /** The last asking, while it is under way. */
  due?: Asking | undefined
  /** The one that follows it. */
  next?: Promise<void> | undefined
}

type How<T> = () => Promise<T>

const shelves = new Map<string, Shelf>()

const keyOf = (person: string, name: string) => JSON.stringify([person, name])

function shelfOf(person: string, name: string): Shelf {
  const key = keyOf(person, name)
  const shelf = shelves.get(key) ?? {
    person,
    name,
    signal: signal<Cached<unknown>>({ state: 'asking' }),
    turn: 0,
    shown: 0,
  }
  shelves.set(key, shelf)
  return shelf
}

/** The signal of a thing by its name, for the person who is signed in; the same one wherever it is asked for. */
export function cachedSignal<T>(name: string): Signal<Cached<T>> {
  return shelfOf(personId(), name).signal as Signal<Cached<T>>
}

/** Asks the server, unless it is being asked already: a slow answer is waited for and not asked for once more. */
export function ask<T>(name: string, how: How<T>): void {
  const shelf = shelfOf(personId(), name)
  if (!shelf.due) begin(shelf, how)
}

/** Asks even if it is being asked already: that question went out over a line that may be gone. */
export function askAnew<T>(name: string, how: How<T>): void {
  begin(shelfOf(personId(), name), how)
}

/**
 * Asks because something has changed, and settles once the answer is kept. Where an asking is under way, one more follows
 * it, however many want it.
 */
export function refresh<T>(name: string, how: How<T>): Promise<void> {
  const shelf = shelfOf(personId(), name)
  if (!shelf.due) return begin(shelf, how).kept
  shelf.next ??= shelf.due.over.then(() => {
    shelf.next = undefined
    return (shelf.due ?? begin(shelf, how)).kept
  })
  return shelf.next
}

let asks: (person: string, name: string, asking: Asking) => void = () => undefined

/** Who is told of each asking as it begins. */
export function onAsking(tell: typeof asks): void {
  asks = tell
}

// What is asked under one sign-in says nothing about the next.
effect(() => {
  if (signIns.value > 0) for (const shelf of shelves.values()) shelf.due = undefined
})

function begin<T>(shelf: Shelf, how: How<T>): Asking {
  shelf.turn += 1
  const [turn, at] = [shelf.turn, Date.now()]
  const answer = how()
  const kept = take(shelf, turn, at, answer)
  const over = answer.then((): Went => 'answered', wentBy)
  const asking = { turn, at, over, kept }
  shelf.due = asking
  void over.then(() => {
    if (shelf.due === asking) shelf.due = undefined
  })
  asks(shelf.person, shelf.name, asking)
  return asking
}

async function take(shelf: Shelf, turn: number, at: number, answer: Promise<unknown>): Promise<void> {
  const copied = shelf.signal.peek().value === undefined ? showCopy(shelf) : undefined
  try {
    const value = await answer
    // An answer that was overtaken by a later one is dropped.
    if (turn > shelf.shown) await put(shelf, turn, value, at)
  } catch (error) {
    const failed = failure(error)
    if (turn > shelf.shown) shelf.signal.value = { ...shelf.signal.value, ...failed }
    await copied
  }
}

/** Shows the copy on the phone until something newer comes. */
async function showCopy({ person, name, signal }: Shelf): Promise<void> {
  const copy = await read('kept', person, name).catch(() => undefined)
  if (copy && signal.value.value === undefined) signal.value = { ...signal.value, value: copy.value, at: copy.at }
}

/** Puts an answer of the server in place, in memory and on the phone. Answers asked for earlier do not replace it. */
export async function replace<T>(name: string, value: T): Promise<void> {
  const shelf = shelfOf(personId(), name)
  shelf.turn += 1
  await put(shelf, shelf.turn, value, Date.now())
}

/** Puts an answer of the server to this person on the screen; the caller keeps it on the phone. */
export function show(person: string, name: string, value: unknown): void {
  const shelf = shelfOf(person, name)
  shelf.turn += 1
  shelf.shown = shelf.turn
  shelf.signal.value = { value, at: Date.now(), state: 'fresh' }
}

async function put(shelf: Shelf, turn: number, value: unknown, at: number): Promise<void> {
  const { person, name } = shelf
  shelf.shown = turn
  shelf.signal.value = { value, at, state: 'fresh' }
  // A full or forbidden store must not keep the answer from the screen.
  await write('kept', person, name, value, at)
    .then(() => postToTabs({ kind: 'kept', person, name }))
    .catch(() => undefined)
}

// Another tab has heard from the server.
onTabMessage('kept', async ({ person, name }) => {
  const shelf = shelves.get(keyOf(person, name))
  if (!shelf) return
  const { shown } = shelf
  const copy = await read('kept', person, name)
  const { at = 0 } = shelf.signal.value
  if (!copy || shelf.shown !== shown || copy.at < at) return
  // What this tab has asked for since is newer than what the other one was told.
  if (shelf.due && shelf.due.at <= copy.at) shelf.shown = shelf.due.turn
  shelf.signal.value = { value: copy.value, at: copy.at, state: 'fresh' }
})

function failure(error: unknown): Pick<Cached<unknown>, 'state' | 'problem'> {
  if (error instanceof Unreachable) return { state: 'offline' }
  if (error instanceof Refused) return { state: 'failed', problem: error }
  throw error
}

function wentBy(error: unknown): Went {
  if (error instanceof Refused && error.status === 401) return 'signed out'
  return error instanceof Refused && error.forGood ? 'refused' : 'no answer'
}
