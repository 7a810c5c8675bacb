import { signal } from '@preact/signals'

/** Set once a newer version of the app is ready; calling it takes that version up. */
export const newVersion = signal<(() => void) | undefined>(undefined)

interface ScriptPolicy {
  createScriptURL(address: string): string
}

// The worker's address goes through a policy of its own, so that the page can run under
// Content-Security-Policy: require-trusted-types-for 'script'; trusted-types app
const rules: ScriptPolicy = {
  createScriptURL(address) {
    if (address !== '/sw.js') throw new TypeError(`not allowed as a worker: ${address}`)
    return address
  },
}

function policy(): ScriptPolicy {
  const types = (globalThis as { trustedTypes?: { createPolicy(name: string, rules: ScriptPolicy): ScriptPolicy } })
    .trustedTypes
  return types ? types.createPolicy('app', rules) : rules
}

/** Registers the worker; says through `newVersion` when a newer app waits. */
export async function registerWorker(): Promise<void> {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return
  const workers = navigator.serviceWorker
  const registration = await workers.register(policy().createScriptURL('/sw.js'), { scope: '/' })
  const offer = (waiting: ServiceWorker | null) => {
    if (waiting && workers.controller) newVersion.value = () => waiting.postMessage('take-over')
  }
  offer(registration.waiting)
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing
    coming?.addEventListener('statechange', () => coming.state === 'installed' && offer(coming))
  })
  let hasOne = workers.controller !== null
  workers.addEventListener('controllerchange', () => {
    if (hasOne) location.reload()
    hasOne = true
  })
  // A page that was on its way while the worker became active is nobody's, and would stay so as long as it is open:
  // a screen that it opens later would not be there without a connection.
  if (!hasOne) registration.active?.postMessage('claim')
}
