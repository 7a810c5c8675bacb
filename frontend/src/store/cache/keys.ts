import * as calls from '@/api/programme'
import type { KeyWithText, NewKey } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { refresh } from './cached'
import { useCached } from './hooks'

const OWN = 'keys of scripts'
const SERVICES = 'keys of services'
const programme = () => membership.value?.programme.id ?? ''

/** Keys of one kind: what there is, and how one is made and revoked. A key's text is given to the screen and kept nowhere. */
export interface KeysKept {
  use(): ReturnType<typeof useOwn>
  /** Then asks for the list, whatever came: of a lost answer it tells. Nobody waits for that: the key is seen now or never. */
  make(body: NewKey): Promise<KeyWithText>
  revoke(id: string): Promise<void>
}

const useOwn = () => useCached(OWN, calls.listKeys)
const askServices = () => calls.listServiceKeys(programme())

export const ownKeys: KeysKept = {
  use: useOwn,
  make(body) {
    return calls.makeKey(body).finally(() => void refresh(OWN, calls.listKeys))
  },
  async revoke(id) {
    await calls.revokeKey(id)
    await refresh(OWN, calls.listKeys)
  },
}

export const serviceKeys: KeysKept = {
  use: () => useCached(SERVICES, askServices),
  make(body) {
    return calls.makeServiceKey(programme(), body).finally(() => void refresh(SERVICES, askServices))
  },
  async revoke(id) {
    await calls.revokeServiceKey(programme(), id)
    await refresh(SERVICES, askServices)
  },
}
