import { done, http, told } from './client'
import type * as S from './shapes'

export const getPushKey = () => told(http.GET('/api/v1/push-key'), { key: 'string' })

export const putSubscription = (body: S.PushSubscriptionGiven) => done(http.PUT('/api/v1/push-subscription', { body }))

export const removeSubscription = (endpoint: string) =>
  done(http.DELETE('/api/v1/push-subscription', { params: { query: { endpoint } } }))
