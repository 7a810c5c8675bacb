import { LONGEST_MS, type Retry, retrying, whenLookedAt } from '@/store/device/retry'
import { personId } from '@/store/session/session'
import { type Asking, ask, askAnew, onAsking, type Went } from './cached'

// When a thing that is on the screen is asked for: one asking at a time, however many parts of the screen show it.

const JUST_MS = 2000 // what was asked for so shortly ago is on its way over the present line

type How = () => Promise<unknown>

interface Watch {
  readonly name: string
  /** How each part of the screen asks for it: all ask the same. */
  readonly hows: How[]
  /** How often each of them wants it anew. */
  readonly paces: number[]
  readonly retry: Retry
  asking?: Asking
  /** When it was last asked for, by a clock that nobody sets. */
  asked_ms: number
  timer?: ReturnType<typeof setTimeout> | undefined
  end?: (() => void) | undefined
}

const watches = new Map<string, Watch>()

const keyOf = (person: string, name: string) => JSON.stringify([person, name])

function watchOf(name: string): Watch {
  const key = keyOf(personId(), name)
  const found = watches.get(key)
  if (found) return found
  const made: Watch = { name, hows: [], paces: [], retry: retrying(() => look(made)), asked_ms: 0 }
  watches.set(key, made)
  return made
}

/**
 * A part of the screen shows it: asked for now, again where no answer comes, and when the page is looked at again.
 * Returns what ends that.
 */
export function watch(name: string, how: How): () => void {
  const one = watchOf(name)
  one.hows.push(how)
  one.end ??= whenLookedAt(() => lookAgain(one))
  ask(name, how)
  return () => {
    one.hows.splice(one.hows.indexOf(how), 1)
    if (one.hows.length > 0) return
    one.end?.()
    one.end = undefined
    clearTimeout(one.timer)
    one.retry.over()
  }
}

/** It is wanted anew that often while it is looked at. Returns what ends that. */
export function pace(name: string, every_ms: number): () => void {
  const one = watchOf(name)
  one.paces.push(every_ms)
  plan(one)
  return () => {
    one.paces.splice(one.paces.indexOf(every_ms), 1)
    plan(one)
  }
}

const paceOf = ({ paces }: Watch) => Math.min(...paces)

/** A page that is not looked at asks nothing; coming into sight it asks at once. */
function look(one: Watch): void {
  const how = one.hows.at(-1)
  if (how && document.visibilityState === 'visible') ask(one.name, how)
}

/** What is still under way from before was asked over a line that may be no more. */
function lookAgain(one: Watch): void {
  const how = one.hows.at(-1)
  const just = performance.now() - one.asked_ms < JUST_MS
  if (how) (just ? ask : askAnew)(one.name, how)
}

onAsking((person, name, asking) => {
  const one = watches.get(keyOf(person, name))
  if (!one) return
  one.asking = asking
  one.asked_ms = performance.now()
  void asking.over.then((went) => {
    if (one.asking === asking) next(one, went)
  })
})

/** When it is asked for again. */
function next(one: Watch, went: Went): void {
  clearTimeout(one.timer)
  if (one.hows.length === 0) return
  if (went === 'no answer') one.retry.later(Math.min(LONGEST_MS, paceOf(one)))
  else one.retry.over()
  // Signed out: the next sign-in asks.
  if (went === 'answered' || went === 'refused') plan(one)
}

function plan(one: Watch): void {
  clearTimeout(one.timer)
  const wait_ms = one.asked_ms + paceOf(one) - performance.now()
  if (one.hows.length > 0 && Number.isFinite(wait_ms)) one.timer = setTimeout(() => look(one), Math.max(0, wait_ms))
}
