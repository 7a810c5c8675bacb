import { wrap } from 'idb'
import { afterAll, vi } from 'vitest'
import type { Session } from '@/api/shapes'

/** What becomes of an operation that was under way when the page was killed: nobody in the page ever learns. */
export type Fate = 'undone' | 'done'

export interface Stop {
  readonly at: string
  /** Which time it comes by there, from 1. */
  readonly time: number
  readonly fate: Fate
}

const never = new Promise<never>(() => undefined)

/** The transactions that the page has open: a kill undoes them, or the browser had just finished them. */
const open = new Set<IDBTransaction>()
const { transaction } = IDBDatabase.prototype
IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...args: Parameters<typeof transaction>) {
  const made = transaction.apply(this, args)
  open.add(made)
  // Nobody listens to a dead page's transactions.
  ;(wrap(made) as unknown as { done: Promise<void> }).done.catch(() => undefined).finally(() => open.delete(made))
  return made
} as typeof transaction
afterAll(() => {
  IDBDatabase.prototype.transaction = transaction
})

/** A dead page neither hears the others nor tells them anything. */
const channels: BroadcastChannel[] = []
const Channel = globalThis.BroadcastChannel
globalThis.BroadcastChannel = class extends Channel {
  constructor(name: string) {
    super(name)
    channels.push(this)
  }
  override postMessage(message: unknown): void {
    if (channels.includes(this)) super.postMessage(message)
  }
}

/** Nor does any of its clocks go off. */
const timers: ReturnType<typeof setTimeout>[] = []
const { setTimeout: start } = globalThis
globalThis.setTimeout = ((...args: Parameters<typeof start>) => {
  const made = start(...args)
  timers.push(made)
  return made
}) as typeof start

/**
 * One opening of the app on the phone: modules of its own, nothing in memory, the store as it was left. At its `stop` it
 * is killed: no line of it runs any more, whatever was waiting.
 */
export class Page {
  readonly passed: string[] = []
  readonly killed: Promise<void>
  dead = false
  private died: () => void = () => undefined

  constructor(
    readonly stop?: Stop,
    /** Another tab holds the lock and does not run. */
    readonly asleep = false,
  ) {
    this.killed = new Promise((resolve) => {
      this.died = resolve
    })
  }

  /** Called by each module on the way of an entry (see vitest.awaits.ts). */
  loads(names: readonly string[]) {
    for (const name of names) known.add(name)
    return <T>(name: string, under_way: Promise<T>): Promise<T> => {
      this.comesBy(name)
      return Promise.resolve(under_way).then(
        (value) => (this.dead ? never : value),
        (error) => (this.dead ? never : Promise.reject(error)),
      )
    }
  }

  private comesBy(name: string): void {
    if (this.dead) return
    this.passed.push(name)
    const time = this.passed.filter((passed) => passed === name).length
    if (this.stop?.at === name && this.stop.time === time) this.kill(this.stop.fate)
  }

  kill(fate: Fate = 'undone'): void {
    if (this.dead) return
    this.dead = true
    holders.clear()
    for (const channel of channels.splice(0)) channel.close()
    for (const timer of timers.splice(0)) clearTimeout(timer)
    if (fate === 'undone') {
      for (const opened of open) {
        try {
          opened.abort()
        } catch {
          // It had just finished.
        }
      }
    }
    this.died()
  }

  /** A request reaches the server unless the page was killed with it still unsent. */
  get sends(): boolean {
    return !this.dead || this.stop?.fate === 'done'
  }
}

/** Every await on the way of an entry, as the code has them. */
export const known = new Set<string>()

/** Each lock's holder and those behind it, by its name. */
const holders = new Map<string, Promise<unknown>>()

const tooLong = () => Promise.reject(new DOMException('waited too long for the lock', 'TimeoutError'))

/** The locks of a browser, as far as the outbox uses them: one holder of a name at a time, and a killed page holds none. */
const locks = {
  request(name: string, _: object, work: () => Promise<void>): Promise<void> {
    const { page } = globalThis as unknown as { page: Page }
    if (page.asleep) return tooLong()
    // Nothing that is dead asks for a lock, though its last lines still run in here.
    if (page.dead) return never
    const mine = (holders.get(name) ?? Promise.resolve()).then(() => (page.dead ? never : work()))
    holders.set(
      name,
      mine.catch(() => undefined),
    )
    return mine
  },
}
Object.defineProperty(navigator, 'locks', { configurable: true, value: locks })

/** Opens the app anew, as `person`. */
export async function openApp(person: string, stop?: Stop, asleep?: boolean) {
  const page = new Page(stop, asleep)
  vi.stubGlobal('page', page)
  vi.resetModules()
  const [{ session, sessionState, signIns }, { recordEvent }, { send, sendAgain }, outbox, { database }, cached] =
    await Promise.all([
      import('@/store/session/session'),
      import('@/store/outbox/record'),
      import('@/store/outbox/sender'),
      import('@/store/outbox/outbox'),
      import('@/store/device/database'),
      import('@/store/cache/cached'),
    ])
  session.value = { person: { id: person, username: person, name: person }, memberships: [] } as unknown as Session
  sessionState.value = 'in'
  const { unsent, treatmentName } = outbox
  const { cachedSignal, show } = cached
  return { page, recordEvent, send, sendAgain, unsent, database, signIns, treatmentName, cachedSignal, show }
}

export type App = Awaited<ReturnType<typeof openApp>>
