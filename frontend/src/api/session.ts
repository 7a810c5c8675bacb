import { http, told } from './client'

export const getSession = () => told(http.GET('/api/v1/session'))

export const signIn = (username: string, password: string) =>
  told(http.POST('/api/v1/session', { body: { username, password } }))

export const signOut = () => told(http.DELETE('/api/v1/session'))
