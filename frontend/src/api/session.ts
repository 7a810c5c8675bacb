import { csrfToken, done, http, told } from './client'

const SESSION = { person: 'object', memberships: 'list' } as const

export const getSession = () => told(http.GET('/api/v1/session'), SESSION)

export async function signIn(username: string, password: string) {
  // Asking who is signed in sets the token's cookie, whatever the answer; a phone that lost it gets it so.
  if (!csrfToken()) await http.GET('/api/v1/session')
  return told(http.POST('/api/v1/session', { body: { username, password } }), SESSION)
}

export const signOut = () => done(http.DELETE('/api/v1/session'))
