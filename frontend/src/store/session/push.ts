import { useEffect, useState } from 'preact/hooks'
import * as calls from '@/api/calls'
import { Unreachable } from '@/api/problem'

/** `unreachable`: the browser's own push service did not answer. */
type PushState = 'unsupported' | 'denied' | 'on' | 'off' | 'unreachable'

/** The browser's manager of subscriptions; none where it has no worker of ours or no push. */
async function manager(): Promise<PushManager | undefined> {
  if (!('serviceWorker' in navigator && 'PushManager' in globalThis && 'Notification' in globalThis)) return undefined
  return (await navigator.serviceWorker.getRegistration())?.pushManager
}

async function present(): Promise<PushState> {
  const push = await manager()
  if (!push) return 'unsupported'
  if (Notification.permission === 'denied') return 'denied'
  const subscription = await push.getSubscription()
  return subscription && (await stillHolds(subscription)) ? 'on' : 'off'
}

/**
 * Whether the server still notifies this browser. The subscription is sent once more, as the server may have dropped it.
 * One that was made for another key belongs to a server that is gone, and is ended.
 */
async function stillHolds(subscription: PushSubscription): Promise<boolean> {
  try {
    const { key } = await calls.getPushKey()
    if (keyOf(subscription) !== key) return !(await subscription.unsubscribe())
    await give(subscription)
  } catch (error) {
    if (!(error instanceof Unreachable)) return false
  }
  return true
}

function keyOf({ options }: PushSubscription): string {
  const numbers = String.fromCharCode(...new Uint8Array(options.applicationServerKey ?? new ArrayBuffer()))
  return btoa(numbers).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

function give(subscription: PushSubscription): Promise<unknown> {
  const { endpoint = '', keys: { p256dh = '', auth = '' } = {} } = subscription.toJSON()
  return calls.putSubscription({ endpoint, p256dh, auth })
}

/** Asks the reader's leave and has the server notify this browser. Raises Refused and Unreachable. */
async function allow(): Promise<PushState> {
  const push = await manager()
  if (!push) return 'unsupported'
  const leave = await Notification.requestPermission()
  if (leave !== 'granted') return leave === 'denied' ? 'denied' : 'off'
  const { key } = await calls.getPushKey()
  await (await push.getSubscription())?.unsubscribe()
  const made = await push.subscribe({ userVisibleOnly: true, applicationServerKey: key }).catch(() => undefined)
  if (!made) return 'unreachable'
  try {
    await give(made)
  } catch (error) {
    await made.unsubscribe()
    throw error
  }
  return 'on'
}

/** Ends notifications on this browser. A server that does not hear of it now is refused by the push service later. */
export async function stopPush(): Promise<PushState> {
  const subscription = await (await manager())?.getSubscription()
  if (subscription) {
    await subscription.unsubscribe()
    await calls.removeSubscription(subscription.endpoint).catch(() => undefined)
  }
  return present()
}

/** After a sign-in this browser is notified as it was before: a new password has ended that on the server. */
export async function notifyAsBefore(): Promise<void> {
  await present().catch(() => undefined)
}

/** Where notifications on this device stand, and how to change it; no state before it is known. */
export function usePush() {
  const [state, setState] = useState<PushState>()
  useEffect(() => void present().then(setState, () => setState('unsupported')), [])
  return { state, allow: async () => setState(await allow()), stop: async () => setState(await stopPush()) }
}
