import * as calls from '@/api/calls'
import type { KeyMade, NewKey } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { refresh } from './cached'
import { useCached } from './hooks'

const OWN = 'keys of scripts'
const SERVICES = 'keys of services'
const programme = () => membership.value?.programme.id ?? ''

/** Keys of one kind: what there is, and how one is made and revoked. A key's text is given to the screen and kept nowhere. */
export interface KeysKept {
  use(): ReturnType<typeof useOwn>
  make(body: NewKey): Promise<KeyMade>
  revoke(id: string): Promise<void>
}

const useOwn = () => useCached(OWN, calls.listKeys)
const askServices = () => calls.listServiceKeys(programme())

export const ownKeys: KeysKept = {
  use: useOwn,
  async make(body) {
    const made = await calls.makeKey(body)
    // Not waited for: whatever comes of it, this key is seen now or never.
    void refresh(OWN, calls.listKeys)
    return made
  },
  async revoke(id) {
    await calls.revokeKey(id)
    await refresh(OWN, calls.listKeys)
  },
}

export const serviceKeys: KeysKept = {
  use: () => useCached(SERVICES, askServices),
  async make(body) {
    const made = await calls.makeServiceKey(programme(), body)
    void refresh(SERVICES, askServices)
    return made
  },
  async revoke(id) {
    await calls.revokeServiceKey(programme(), id)
    await refresh(SERVICES, askServices)
  },
}
