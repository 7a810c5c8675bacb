import { signal } from '@preact/signals'

// What the browser still gives the app on this phone. It is told while there is room for the rest of a visit.

const SHORT_BYTES = 50_000_000 // a visit's images at a few megabytes each, beside which events weigh nothing

/** Bytes left, where they have become few. */
export const spaceLeft_bytes = signal<number | undefined>(undefined)

/** Looks how much is left. Browsers that do not tell are taken to have enough. */
export async function lookAtSpace(): Promise<void> {
  const { quota, usage } = (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {}
  const left = quota === undefined || usage === undefined ? undefined : quota - usage
  spaceLeft_bytes.value = left !== undefined && left < SHORT_BYTES ? Math.max(0, left) : undefined
}

/** Asks the browser never to clear the app's store by itself, and looks at the space now and whenever looked at. */
export function startSpace(): void {
  // Refused or unknown: then the store is cleared only when the phone runs full, which is told before.
  void navigator.storage?.persist?.().catch(() => undefined)
  void lookAtSpace()
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void lookAtSpace())
}
