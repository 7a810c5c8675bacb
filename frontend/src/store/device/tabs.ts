/** What one tab of this phone tells the others: where to look again. Never what is there: the store says that. */
type TabMessage =
  | { kind: 'outbox'; person: string; caseId: string }
  | { kind: 'taken'; person: string; caseId: string }
  | { kind: 'kept'; person: string; name: string }
  | { kind: 'emergency' }
  | { kind: 'session' }

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('fourth-canal')
const listeners: { [K in TabMessage['kind']]?: (heard: Extract<TabMessage, { kind: K }>) => Promise<void> } = {}

/** In the order in which it was told: an answer is on the screen before what it answers leaves it. */
let before: Promise<unknown> = Promise.resolve()

channel?.addEventListener('message', ({ data }: MessageEvent<TabMessage>) => {
  const listen = listeners[data.kind] as ((heard: TabMessage) => Promise<void>) | undefined
  // A store that cannot be read now is read when the tab is next looked at.
  before = before.then(() => listen?.(data)).catch(() => undefined)
})

export function postToTabs(what: TabMessage): void {
  channel?.postMessage(what)
}

export function onTabMessage<K extends TabMessage['kind']>(
  kind: K,
  listen: (heard: Extract<TabMessage, { kind: K }>) => Promise<void>,
): void {
  Object.assign(listeners, { [kind]: listen })
}
