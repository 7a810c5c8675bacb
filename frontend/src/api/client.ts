import createClient, { type Middleware } from 'openapi-fetch'
import type { paths } from './generated'
import { asRefusal, Unreachable } from './problem'

const TIMEOUT_MS = 20_000 // past this a phone has lost the connection without noticing

let signedOut: () => void = () => undefined

/** Who is told when an answer says that nobody is signed in. */
export function onSignedOut(tell: () => void): void {
  signedOut = tell
}

let answered: (date: string) => void = () => undefined

/** Who is told the server's time of each answer. */
export function onAnswered(tell: (date: string) => void): void {
  answered = tell
}

/** Read at each sending: the token turns at sign-in. */
export function csrfToken(): string {
  return /(?:^|; )csrftoken=([^;]+)/.exec(document.cookie)?.[1] ?? ''
}

const withToken: Middleware = {
  onRequest({ request }) {
    if (request.method !== 'GET') request.headers.set('X-CSRFToken', csrfToken())
    return request
  },
}

async function send(request: Request): Promise<Response> {
  try {
    const response = await fetch(request, { signal: AbortSignal.timeout(TIMEOUT_MS), cache: 'no-cache' })
    answered(response.headers.get('Date') ?? '')
    return response
  } catch {
    throw new Unreachable()
  }
}

export const http = createClient<paths>({ baseUrl: globalThis.location?.origin ?? '', fetch: send })
http.use(withToken)

interface Answer<T> {
  data?: T
  error?: unknown
  response: Response
}

/** What the server answered. Raises Refused with its reasons, Unreachable where no answer came. */
export async function told<T>(call: Promise<Answer<T>>): Promise<T> {
  const { data, error, response } = await call
  if (response.ok) return data as T
  if (response.status === 401) signedOut()
  throw asRefusal(response, error)
}
