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
  const watched = watches.get(key)
  if (watched) return watched
  const made: Watch = { name, hows: [], paces: [], retry: retrying(() => look(made)), asked_ms: 0 }
  watches.set(key, made)
  return made
}

/**
 * A part of the screen shows it: asked for now, again where no answer comes, and when the page is looked at again.
 * Returns what ends that.
 */
export function watch(name: string, how: How): () => void {
  const watched = watchOf(name)
  watched.hows.push(how)
  watched.end ??= whenLookedAt(() => lookAgain(watched))
  ask(name, how)
  return () => {
    watched.hows.splice(watched.hows.indexOf(how), 1)
    if (watched.hows.length > 0) return
    watched.end?.()
    watched.end = undefined
    clearTimeout(watched.timer)
    watched.retry.over()
  }
}

/** It is wanted anew that often while it is looked at. Returns what ends that. */
export function pace(name: string, every_ms: number): () => void {
  const watched = watchOf(name)
  watched.paces.push(every_ms)
  plan(watched)
  return () => {
    watched.paces.splice(watched.paces.indexOf(every_ms), 1)
    plan(watched)
  }
}

const paceOf = ({ paces }: Watch) => Math.min(...paces)

/** A page that is not looked at asks nothing; coming into sight it asks at once. */
function look(watched: Watch): void {
  const how = watched.hows.at(-1)
  if (how && document.visibilityState === 'visible') ask(watched.name, how)
}

/** What is still under way from before was asked over a line that may be no more. */
function lookAgain(watched: Watch): void {
  const how = watched.hows.at(-1)
  const just = performance.now() - watched.asked_ms < JUST_MS
  if (how) (just ? ask : askAnew)(watched.name, how)
}

onAsking((person, name, asking) => {
  const watched = watches.get(keyOf(person, name))
  if (!watched) return
  watched.asking = asking
  watched.asked_ms = performance.now()
  void asking.over.then((went) => {
    if (watched.asking === asking) next(watched, went)
  })
})

/** When it is asked for again. */
function next(watched: Watch, went: Went): void {
  clearTimeout(watched.timer)
  if (watched.hows.length === 0) return
  if (went === 'no answer') watched.retry.later(Math.min(LONGEST_MS, paceOf(watched)))
  else watched.retry.over()
  // Signed out: the next sign-in asks.
  if (went === 'answered' || went === 'refused') plan(watched)
}

function plan(watched: Watch): void {
  clearTimeout(watched.timer)
  const wait_ms = watched.asked_ms + paceOf(watched) - performance.now()
  if (watched.hows.length > 0 && Number.isFinite(wait_ms))
    watched.timer = setTimeout(() => look(watched), Math.max(0, wait_ms))
}
