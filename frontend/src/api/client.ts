import createClient, { type Middleware } from 'openapi-fetch'
import type { paths } from './generated'
import { asRefusal, codeIn, MEDIA_TYPE, Unreachable } from './problem'

// Between the phone and the server stand networks that answer by themselves: sign-in pages of a guest network, error
// pages of a proxy, empty answers. Only the server's own answers count; anything else is no answer.

const TIMEOUT_MS = 20_000 // past this a phone has lost the connection without noticing
const TOKEN_MISSING = 'token-missing'

let signedOut: () => void = () => undefined

/** Who is told when an answer says that nobody is signed in. */
export function onSignedOut(tell: () => void): void {
  signedOut = tell
}

const answered: ((date: string) => void)[] = []

/** Who is told the server's time of each answer that is its own. */
export function onAnswered(tell: (date: string) => void): void {
  answered.push(tell)
}

const unanswered: (() => void)[] = []

/** Who is told whenever no answer came. */
export function onUnanswered(tell: () => void): void {
  unanswered.push(tell)
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

/** The answer with all of its body. Raises Unreachable where none came in time, or it is not the server's. */
async function send(request: Request): Promise<Response> {
  const again = request.method === 'GET' ? undefined : request.clone()
  const answer = await heard(request)
  if (!again || answer.status !== 403 || (await codeOf(answer)) !== TOKEN_MISSING) return answer
  // The cookie was lost: asking who is signed in brings a new one.
  await heard(new Request(new URL('/api/v1/session', request.url)))
  again.headers.set('X-CSRFToken', csrfToken())
  return heard(again)
}

async function heard(request: Request): Promise<Response> {
  const answer = await whole(request).catch(() => undefined)
  if (!answer) throw new Unreachable()
  const { status, headers } = answer
  const type = headers.get('Content-Type')?.split(';')[0]?.trim()
  const ours = answer.ok ? status === 204 || type === 'application/json' : type === MEDIA_TYPE
  if (!ours || (!answer.ok && (await codeOf(answer)) === undefined)) throw new Unreachable()
  return answer
}

/** No redirect is followed: the API has none, and a sign-in page of a network is no answer. */
async function whole(request: Request): Promise<Response> {
  const signal = AbortSignal.timeout(TIMEOUT_MS)
  // The one address whose content never changes says so itself.
  const cache = request.cache === 'force-cache' ? request.cache : 'no-cache'
  const answer = await fetch(request, { signal, cache, redirect: 'error' })
  const { status, headers } = answer
  const body = await answer.arrayBuffer()
  // An answer without content has an empty body in some browsers, and none may be given to it.
  return new Response(status === 204 ? null : body, { status, headers })
}

const codeOf = async (answer: Response) => codeIn(await answer.clone().text())

export const http = createClient<paths>({ baseUrl: globalThis.location?.origin ?? '', fetch: send })
http.use(withToken)

interface Answer<T> {
  data?: T
  error?: unknown
  response: Response
}

type Kind<V> = V extends readonly unknown[]
  ? 'list'
  : V extends string
    ? 'string'
    : V extends number
      ? 'number'
      : V extends boolean
        ? 'boolean'
        : V extends null
          ? 'there'
          : 'object'

/** The least that an answer has by which it is known for the server's: some of its parts, and of what kind they are; `there` where it may be null. */
type Least<T> = { readonly [K in keyof T]?: Kind<T[K]> }

/**
 * What the server answered. Raises Refused with its reasons, Unreachable where no answer came or it has not at least what
 * an answer to this has.
 */
export async function answerTo<T>(call: Promise<Answer<T>>, least: Least<T>): Promise<T> {
  const { data, response } = await ended(call)
  if (!has(data, least)) return lost()
  tellAnswered(response)
  return data as T
}

/** As `answerTo`; undefined where the server asks to sign in, which is no error. An empty answer alone may be anybody's. */
export async function answerUnlessOut<T>(call: Promise<Answer<T>>, least: Least<T>): Promise<T | undefined> {
  const { response } = await ended(call)
  if (response.status !== 204 || !response.headers.has('WWW-Authenticate')) return answerTo(call, least)
  tellAnswered(response)
  return undefined
}

/** The server has done it and has nothing to say. Raises as `answerTo` does. */
export async function done(call: Promise<Answer<unknown>>): Promise<void> {
  const { response } = await ended(call)
  if (response.status !== 204) return lost()
  tellAnswered(response)
}

async function ended<T>(call: Promise<Answer<T>>): Promise<Answer<T>> {
  const answer = await call.catch((error) => {
    // JSON that is none: cut off, or written by something in between.
    if (error instanceof Unreachable || error instanceof SyntaxError) return lost()
    throw error
  })
  const { error, response } = answer
  if (response.ok) return answer
  const refusal = asRefusal(response, error)
  if (refusal.code === TOKEN_MISSING) return lost()
  tellAnswered(response)
  if (response.status === 401) signedOut()
  throw refusal
}

function has<T>(data: unknown, least: Least<T>): boolean {
  if (typeof data !== 'object' || data === null) return false
  return Object.entries(least).every(([name, kind]) => {
    const value = (data as Record<string, unknown>)[name]
    return kind === 'there' ? value !== undefined : kindOf(value) === kind
  })
}

const kindOf = (value: unknown) => (Array.isArray(value) ? 'list' : value === null ? 'nothing' : typeof value)

function tellAnswered({ headers }: Response): void {
  for (const tell of answered) tell(headers.get('Date') ?? '')
}

function lost(): never {
  for (const tell of unanswered) tell()
  throw new Unreachable()
}

// --- what several groups of calls share ---

/** What an answer is known by: see `answerTo`. */
export const NAMED = { id: 'string' } as const
export const LISTED = { results: 'list' } as const

export const ofProgramme = (programme_id: string) => ({ params: { path: { programme_id } } })

/** An entity tag as a header carries it (RFC 9110, 8.8.3). */
export const tag = (value: string | number) => `"${value}"`
