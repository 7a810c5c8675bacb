import { vi } from 'vitest'

export interface Sent {
  method: string
  path: string
  headers: Headers
  body: unknown
  /** How far the browser may answer by itself. */
  cache?: string | undefined
}

/** `html`: a page of something that stands between the phone and the server. */
type Answer = { status?: number; body?: unknown; html?: string; waitS?: number; asks?: string } | 'nothing'

/** Nobody is signed in: what `GET session` answers to it. */
export const NOBODY = { status: 204, asks: 'Session realm="fourth-canal"' }

/** A server that answers by what `answers` says for `GET /path`, and tells what it was sent. */
export function serve(answers: (sent: Sent) => Answer | Promise<Answer>): Sent[] {
  const seen: Sent[] = []
  vi.stubGlobal('fetch', async (request: Request, how?: RequestInit) => {
    const text = await request.text()
    const path = new URL(request.url).pathname.replace('/api/v1/', '')
    const sent = {
      method: request.method,
      path,
      headers: request.headers,
      body: text ? JSON.parse(text) : undefined,
      cache: how?.cache,
    }
    seen.push(sent)
    const answer = await answers(sent)
    if (answer === 'nothing') throw new TypeError('Failed to fetch')
    const { status = 200, body, html, waitS, asks } = answer
    const type = html ? 'text/html' : status < 400 ? 'application/json' : 'application/problem+json'
    const sends = status === 204 ? null : (html ?? JSON.stringify(body))
    return new Response(sends, {
      status,
      headers: {
        'Content-Type': type,
        ...(waitS === undefined ? {} : { 'Retry-After': String(waitS) }),
        ...(asks === undefined ? {} : { 'WWW-Authenticate': asks }),
      },
    })
  })
  return seen
}

export function problem(status: number, code: string, errors: { pointer: string; detail: string }[] = []) {
  const fields = errors.map((e) => ({ code, ...e }))
  return {
    status,
    body: { type: `/api/v1/problems/${code}`, status, detail: `Refused: ${code}.`, errors: fields },
  }
}
