import { ask } from './client'
import type { Session } from './shapes'

export const getSession = () => ask<Session>('session')

export const signIn = (username: string, password: string) =>
  ask<Session>('session', { method: 'POST', body: { username, password } })

export const signOut = () => ask<void>('session', { method: 'DELETE' })
