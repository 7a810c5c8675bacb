import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { afterAll, afterEach, beforeEach, vi } from 'vitest'
import { deeds, globals, nothingLeft } from './left-behind'
import { NEVER_MS } from './until'
import { openWindow } from './window'

// Many files share a thread. Each has a window and modules of its own; what it leaves running is stopped, and what it
// leaves changed fails it.

const globalsBefore = globals()
vi.resetModules()
const closeWindow = openWindow()
// No server but the one a test gives.
globalThis.fetch = () => Promise.reject(new TypeError('Failed to fetch'))
const deedsBefore = deeds()

const running: (() => void)[] = []
const { setTimeout: once, setInterval: often, setImmediate: soon } = globalThis
const { BroadcastChannel: Channel, indexedDB: store } = globalThis
globalThis.setTimeout = ((...args: Parameters<typeof once>) => {
  const timer = once(...args)
  running.push(() => clearTimeout(timer))
  return timer
}) as typeof once
globalThis.setInterval = ((...args: Parameters<typeof often>) => {
  const timer = often(...args)
  running.push(() => clearInterval(timer))
  return timer
}) as typeof often
// What the phone's database answers with.
globalThis.setImmediate = ((...args: Parameters<typeof soon>) => {
  const turn = soon(...args)
  running.push(() => clearImmediate(turn))
  return turn
}) as typeof soon
const file = crypto.randomUUID()
globalThis.BroadcastChannel = class extends Channel {
  constructor(name: string) {
    // Node's reach from thread to thread.
    super(`${name} ${file}`)
    running.push(() => this.close())
  }
}

const [{ cleanup, configure }, { closeDatabase }, { closeEmergencyStore }, { closeSentStore }] = await Promise.all([
  import('@testing-library/preact'),
  import('@/store/device/database'),
  import('@/store/outbox/emergency-store'),
  import('@/store/outbox/acknowledged-store'),
])

configure({ asyncUtilTimeout: NEVER_MS })

beforeEach(async () => {
  await closeDatabase()
  await closeEmergencyStore()
  await closeSentStore()
  globalThis.indexedDB = new IDBFactory()
})

afterEach(cleanup)

afterAll(async () => {
  // What was about to go on comes to where it waits for a timer or the database, and is stopped there.
  while (running.length) {
    for (const stop of running.splice(0)) stop()
    await new Promise((resolve) => soon(resolve))
  }
  vi.useRealTimers()
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
  Object.assign(globalThis, { setTimeout: once, setInterval: often, setImmediate: soon })
  Object.assign(globalThis, { BroadcastChannel: Channel, indexedDB: store })
  nothingLeft(deedsBefore, deeds())
  closeWindow()
  nothingLeft(globalsBefore, globals())
})
