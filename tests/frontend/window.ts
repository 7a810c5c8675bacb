import { GlobalWindow } from 'happy-dom'
import { populateGlobal } from 'vitest/runtime'

/** The browser's own, though Node has something of the same name. */
const IN_PLACE_OF_NODES = ['Request', 'Response', 'MessagePort', 'fetch', 'Headers', 'FormData']
const ALSO = [...IN_PLACE_OF_NODES, 'AbortController', 'AbortSignal', 'URL', 'URLSearchParams']

/** Makes the globals those of a new window. What comes back puts Node's own in their place again. */
export function openWindow(): () => void {
  const opened = new GlobalWindow({ url: 'http://localhost:3000', settings: { disableErrorCapturing: true } })
  const { keys, originals } = populateGlobal(globalThis, opened, { bindFunctions: true, additionalKeys: ALSO })
  return () => {
    // Not waited for: it ends at once whatever can be ended, and then waits for the rest, which may never end.
    void opened.happyDOM.abort()
    for (const key of keys) Reflect.deleteProperty(globalThis, key)
    for (const [key, value] of originals) Reflect.set(globalThis, key, value)
  }
}
