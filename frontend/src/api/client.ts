import { asRefusal, Unreachable } from './problem'

const TIMEOUT_MS = 20_000 // past this a phone has lost the connection without noticing

let signedOut: () => void = () => undefined

/** Who is told when an answer says that nobody is signed in. */
export function onSignedOut(tell: () => void): void {
  signedOut = tell
}

/** Read at each sending: the token turns at sign-in. */
function csrfToken(): string {
  return /(?:^|; )csrftoken=([^;]+)/.exec(document.cookie)?.[1] ?? ''
}

interface Sending {
  method?: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE'
  body?: unknown
  /** The ETag that was on the screen. */
  ifMatch?: string
}

/** The server's answer. Raises Refused with its reasons, Unreachable where none came. */
export async function ask<T>(path: string, { method = 'GET', body, ifMatch }: Sending = {}): Promise<T> {
  const headers: Record<string, string> = { Accept: 'application/json' }
  if (method !== 'GET') headers['X-CSRFToken'] = csrfToken()
  if (body !== undefined) headers['Content-Type'] = 'application/json'
  if (ifMatch !== undefined) headers['If-Match'] = ifMatch
  const request = { method, headers, signal: AbortSignal.timeout(TIMEOUT_MS), cache: 'no-cache' } as const
  const response = await fetch(`/api/v1/${path}`, {
    ...request,
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  }).catch(() => {
    throw new Unreachable()
  })
  const told: unknown = response.status === 204 ? undefined : await response.json().catch(() => undefined)
  if (response.ok) return told as T
  if (response.status === 401) signedOut()
  throw asRefusal(response, told)
}
