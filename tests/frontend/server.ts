import { vi } from 'vitest'

export interface Sent {
  method: string
  path: string
  headers: Headers
  body: unknown
}

type Answer = { status?: number; body?: unknown } | 'nothing'

/** A server that answers by what `answers` says for `GET /path`, and tells what it was sent. */
export function serve(answers: (sent: Sent) => Answer | Promise<Answer>): Sent[] {
  const seen: Sent[] = []
  vi.stubGlobal('fetch', async (request: Request) => {
    const text = await request.text()
    const path = new URL(request.url).pathname.replace('/api/v1/', '')
    const sent = { method: request.method, path, headers: request.headers, body: text ? JSON.parse(text) : undefined }
    seen.push(sent)
    const answer = await answers(sent)
    if (answer === 'nothing') throw new TypeError('Failed to fetch')
    const { status = 200, body } = answer
    const type = status < 400 ? 'application/json' : 'application/problem+json'
    return new Response(status === 204 ? null : JSON.stringify(body), { status, headers: { 'Content-Type': type } })
  })
  return seen
}

export function problem(status: number, code: string, errors: { pointer: string; detail: string }[] = []) {
  const told = errors.map((e) => ({ code, ...e }))
  return {
    status,
    body: { type: `urn:fourth-canal:problem:${code}`, status, detail: `Refused: ${code}.`, errors: told },
  }
}
