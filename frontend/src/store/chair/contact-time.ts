import { signal } from '@preact/signals'
import { personId } from '@/store/session/session'

// How long an irrigant has been in is told by a clock that nobody can set, as long as the page lives. Where that clock and
// the one on the phone disagree, the one was set or the phone slept, and nobody knows which: then the time is not known.

const NAME = 'fourth-canal-contact-times'
const AGREE_MS = 2000 // two clocks read one after the other, and a second of drift
const BEAT_MS = 2000 // how often it is kept how far the count has come
const GAP_MS = 10_000 // a reload; the clock may be set in it by as much, and the time is off by no more

/** A count that was started, each under its person, case, canal and step. */
interface Counting {
  /** The page it is counted in, and when that began by its two clocks. */
  readonly page: string
  readonly steady_ms: number
  readonly clock_ms: number
  /** Counted in pages before; null where that is not known. */
  readonly before_ms: number | null
  /** How far it had come when it was last looked at, and when that was. */
  readonly seen_ms: number | null
  readonly seenClock_ms: number
}

type Since = Readonly<Record<string, Counting>>

const PAGE = Math.random().toString(36).slice(2)

const here = (before_ms: number | null): Counting => {
  const clock_ms = Date.now()
  const steady_ms = performance.now()
  return { page: PAGE, steady_ms, clock_ms, before_ms, seen_ms: before_ms, seenClock_ms: clock_ms }
}

// Small, and wanted at once when the app comes back: hence not from the database.
const since = signal<Since>(goneOn(remembered()))

function remembered(): Since {
  try {
    return JSON.parse(globalThis.localStorage?.getItem(NAME) ?? '{}') as Since
  } catch {
    return {}
  }
}

/**
 * The counts of the page before this one, whose steady clock is gone. The phone's clock bridges a short gap; after a longer
 * one the time is not known.
 */
function goneOn(kept: Since): Since {
  const counts = Object.entries(kept).map(([key, { seen_ms, seenClock_ms }]): [string, Counting] => {
    const gap_ms = Date.now() - seenClock_ms
    const short = gap_ms >= 0 && gap_ms <= GAP_MS
    return [key, here(seen_ms != null && short ? seen_ms + gap_ms : null)]
  })
  return Object.fromEntries(counts)
}

const keyOf = (...place: readonly string[]) => JSON.stringify([personId(), ...place])

function counted_ms({ steady_ms, clock_ms, before_ms }: Counting): number | null {
  const steady = performance.now() - steady_ms
  const clock = Date.now() - clock_ms
  return before_ms === null || Math.abs(clock - steady) > AGREE_MS ? null : before_ms + steady
}

/** Seconds that the irrigant of this step has been in; null where that is not known, undefined where it was not started. */
export function contact_s(place: readonly string[]): number | null | undefined {
  const key = keyOf(...place)
  const counting = since.value[key]
  if (!counting) return undefined
  const now_ms = counted_ms(counting)
  if (Math.abs(Date.now() - counting.seenClock_ms) >= BEAT_MS) look(key, now_ms)
  return now_ms === null ? null : Math.round(now_ms / 1000)
}

/** Keeps how far it has come, for a page that comes after this one; what was ended in another tab stays ended. */
function look(key: string, seen_ms: number | null): void {
  const kept = remembered()
  const counting = since.peek()[key]
  if (counting && kept[key]) write({ ...kept, [key]: { ...counting, seen_ms, seenClock_ms: Date.now() } })
}

export function startContact(place: readonly string[]): void {
  keep({ ...since.value, [keyOf(...place)]: here(0) })
}

export function endContact(place: readonly string[]): void {
  const { [keyOf(...place)]: _, ...rest } = since.value
  keep(rest)
}

function keep(value: Since): void {
  since.value = value
  write(value)
}

function write(value: Since): void {
  localStorage.setItem(NAME, JSON.stringify(value))
}
