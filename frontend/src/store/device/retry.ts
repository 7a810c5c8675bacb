import { onAnswered, onUnanswered } from '@/api/client'

// When to try again what got no answer: after pauses that grow, and at once when it may go better now.

const FIRST_MS = 1000
/** The longest pause between two tries. */
export const LONGEST_MS = 30_000
const SOON_MS = 2000 // between two tries, however often the line seems to be back

/** How long to wait after so many tries in a row that got no answer. */
function pauseAfter_ms(tries: number, longest_ms = LONGEST_MS): number {
  return Math.min(longest_ms, FIRST_MS * 2 ** (tries - 1))
}

const listeners = new Set<() => void>()
let lost = false

onUnanswered(() => {
  lost = true
})

onAnswered(() => {
  if (!lost) return
  lost = false
  for (const listen of listeners) listen()
})

/** Calls `again` when the browser has a connection again, and when the page is looked at again; returns what ends it. */
export function whenLookedAt(again: () => void): () => void {
  const look = () => document.visibilityState === 'visible' && again()
  document.addEventListener('visibilitychange', look)
  addEventListener('online', again)
  return () => {
    document.removeEventListener('visibilitychange', look)
    removeEventListener('online', again)
  }
}

export interface Retry {
  /** It got no answer: once more, after a while. */
  later(longest_ms?: number): void
  /** It got one. */
  over(): void
}

/**
 * Tries again what is sent: after growing pauses; at once on a connection, on being looked at, and when another request
 * is answered after none were, which is how a page learns that the sign-in page of a network is gone.
 */
export function retrying(again: () => void): Retry {
  let tries = 0
  let last = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  listeners.add(() => {
    if (tries > 0 && performance.now() - last > SOON_MS) again()
  })
  return {
    later(longest_ms) {
      tries += 1
      last = performance.now()
      clearTimeout(timer)
      timer = setTimeout(again, pauseAfter_ms(tries, longest_ms))
    },
    over() {
      tries = 0
      clearTimeout(timer)
    },
  }
}
