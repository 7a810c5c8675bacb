// Taken before a test sets the clocks.
const { setTimeout: after } = globalThis
const now_ms = performance.now.bind(performance)

/** However slow the machine is: what has not come by then will not come. */
export const NEVER_MS = 30_000

/** What `look` gives once it no longer throws. Clocks that a test has set stand still meanwhile. */
export async function until<T>(look: () => T | Promise<T>): Promise<T> {
  const end_ms = now_ms() + NEVER_MS
  for (;;) {
    try {
      return await look()
    } catch (error) {
      if (now_ms() > end_ms) throw error
    }
    await new Promise((resolve) => after(resolve, 5))
  }
}
