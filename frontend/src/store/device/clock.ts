import { signal } from '@preact/signals'
import { onAnswered } from '@/api/client'

// A phone's clock may be years off. Order never rests on it; a reader of times has to know.

const TOLERATED_MS = 3 * 60_000 // an answer may be twenty seconds old, and a clock that people look at a minute or two off

/** How far this phone's clock runs ahead of the server's, by the last answer; 0 while that is little, below 0 behind. */
export const clockAhead_ms = signal(0)

onAnswered((date) => {
  const server_ms = Date.parse(date)
  if (Number.isNaN(server_ms)) return
  const ahead_ms = Date.now() - server_ms
  clockAhead_ms.value = Math.abs(ahead_ms) > TOLERATED_MS ? ahead_ms : 0
})
