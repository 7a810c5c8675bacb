import * as calls from '@/api/programme'
import type { PlatformShown, WebhookSet, WebhookShown } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { refresh } from './cached'
import { useCached } from './hooks'

const WEBHOOKS = 'webhooks'
const CLIENTS = 'clients'
const PLATFORMS = 'platforms'
const programme = () => membership.value?.programme.id ?? ''
const askWebhooks = () => calls.listWebhooks(programme())
const askClients = () => calls.listClients(programme())
const askPlatforms = () => calls.listPlatforms(programme())

/** The programme's webhooks, for the coordinator; nobody else is asked for them. */
export const useWebhooks = () => useCached(membership.value?.role === 'coordinator' ? WEBHOOKS : undefined, askWebhooks)
export const useClients = () => useCached(CLIENTS, askClients)
export const usePlatforms = () => useCached(PLATFORMS, askPlatforms)

/** Pauses the webhook as it was seen, or has it go on, where it was given up too. */
export async function setWebhook({ id, revision }: WebhookShown, state: WebhookSet) {
  await calls.setWebhook(programme(), id, revision, state).finally(() => refresh(WEBHOOKS, askWebhooks))
}

/** For good: nothing brings a client back. */
export async function revokeClient(id: string) {
  await calls.revokeClient(programme(), id)
  await refresh(CLIENTS, askClients)
}

/** Switches a platform on or off; it stays as it is in all else. */
export async function setPlatform(of: PlatformShown, active: boolean, password: string) {
  const { id, created_at, grades_waiting, last_refusal, ...registered } = of
  await calls.putPlatform(programme(), id, { ...registered, active, password })
  await refresh(PLATFORMS, askPlatforms)
}
