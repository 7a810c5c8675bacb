import { afterEach, describe, expect, test, vi } from 'vitest'
import * as calls from '@/api/calls'
import { getSession, signIn } from '@/api/calls'
import { onAnswered, onSignedOut } from '@/api/client'
import { Refused, Unreachable } from '@/api/problem'
import { somebody } from './people'
import { NOBODY, problem, serve } from './server'

function token(value: string, age = ''): void {
  // biome-ignore lint/suspicious/noDocumentCookie: the token is read from the cookie
  document.cookie = `csrftoken=${value}${age}`
}

afterEach(() => token('', '; max-age=0'))

async function refused(call: Promise<unknown>): Promise<Refused> {
  const error = await call.catch((e: unknown) => e)
  expect(error).toBeInstanceOf(Refused)
  return error as Refused
}

describe('what is sent', () => {
  test('the token of the cookie as it is at that moment', async () => {
    const seen = serve(() => ({ body: { id: 'v1' } }))
    token('one')
    await calls.submitPlan('v1')
    token('two')
    await calls.submitPlan('v1')
    expect(seen.map((s) => s.headers.get('X-CSRFToken'))).toEqual(['one', 'two'])
  })

  test('a decision carries the hash that was on the screen as a strong tag', async () => {
    const seen = serve(() => ({ status: 201, body: { id: 'r1' } }))
    await calls.review('v1', 'abc', { id: 'r1', decision: 'approved', note: '', remarks: [] })
    expect(seen[0]?.headers.get('If-Match')).toBe('"abc"')
    expect(seen[0]?.path).toBe('plan-versions/v1/reviews')
  })

  test('what a version is made from and says is asked for once, and taken from where the browser keeps it', async () => {
    const input = { choices: { canals: [] } }
    const seen = serve(({ path }) => ({
      body: path.endsWith('/texts/abc')
        ? { plan: { canals: [] }, given: input }
        : { id: 'v1', hash: 'abc', texts: 'there', state: seen.length > 2 ? 'approved' : 'waiting' },
    }))
    const first = await calls.getVersion('v1')
    expect(first).toMatchObject({ state: 'waiting', plan: { canals: [] }, given: input, choices: input.choices })
    expect(await calls.getVersion('v1', first)).toEqual({ ...first, state: 'approved' })
    // Another content under the same name, as after a restored copy.
    await calls.getVersion('v1', { ...first, hash: 'of before' })
    const asked = seen.map(({ path, cache }) => [path.replace('plan-versions/v1', ''), cache])
    const [slim, texts] = [
      ['', 'no-cache'],
      ['/texts/abc', 'force-cache'],
    ]
    expect(asked).toEqual([slim, texts, slim, slim, texts])
  })

  test('without a token sign-in asks for one first', async () => {
    const seen = serve(({ method }) => {
      if (method === 'GET') token('fresh')
      return method === 'GET' ? NOBODY : { body: somebody('ines') }
    })
    await signIn('ines', 'secret')
    expect(seen.map((s) => s.method)).toEqual(['GET', 'POST'])
    expect(seen[1]?.headers.get('X-CSRFToken')).toBe('fresh')
  })
})

const { getCase } = calls

/** As browsers have it (Fetch standard, 'initialize a response'): no body, however empty, goes with these. */
class Strict extends Response {
  constructor(body?: BodyInit | null, init?: ResponseInit) {
    if (body != null && init?.status === 204) throw new TypeError('Response with null body status cannot have body')
    super(body, init)
  }
}

describe('what comes back', () => {
  test('no answer is Unreachable, never a refusal', async () => {
    serve(() => 'nothing')
    await expect(getSession()).rejects.toBeInstanceOf(Unreachable)
  })

  test('a refusal has its code, its sentence, and the sentence of each field', async () => {
    serve(() =>
      problem(422, 'length-out-of-bounds', [
        { pointer: '#/reading/tooth_mm', detail: 'Too long.' },
        { pointer: '#/canals/2', detail: 'Named twice.' },
      ]),
    )
    const error = await refused(getCase('c1'))
    expect(error.code).toBe('length-out-of-bounds')
    expect(error.at('tooth_mm')).toBe('Too long.')
    expect(error.at('canals')).toBe('Named twice.')
    expect(error.at('set_mm')).toBeUndefined()
    expect(error.besides(['tooth_mm'])).toEqual(['Named twice.'])
  })

  test('a refusal that names no field is said as a whole', async () => {
    serve(() => problem(409, 'plan-stale'))
    expect((await refused(calls.submitPlan('v1'))).besides(['kit'])).toEqual(['Refused: plan-stale.'])
  })

  test.each([
    ['a page', { html: '<h1>Welcome to our network</h1>' }],
    ['a page that refuses', { status: 403, html: '<h1>Sign in to this network</h1>' }],
    ['a page that knows nobody', { status: 401, html: '<h1>Sign in to this network</h1>' }],
    ['a page of a gateway', { status: 502, html: '<h1>Bad gateway</h1>' }],
    ['a problem of somebody else', { status: 403, body: { type: 'about:blank', status: 403 } }],
    ['nothing where something is due', { status: 204 }],
    ['something else', { body: {} }],
    ['a list', { body: [] }],
    ['the right names with wrong things', { body: { id: 'c1', revision: 1, canals: {} } }],
  ])('%s is no answer, and nobody is signed out by it', async (_, answer) => {
    const tell = vi.fn()
    onSignedOut(tell)
    serve(() => answer)
    await expect(getCase('c1')).rejects.toBeInstanceOf(Unreachable)
    expect(tell).not.toHaveBeenCalled()
  })

  test.each([{ html: '<h1>Welcome</h1>' }, { body: {} }])('what is done is answered by no page: %o', async (answer) => {
    serve(() => answer)
    await expect(calls.removeCanal('mb')).rejects.toBeInstanceOf(Unreachable)
  })

  test('an answer without content is done, also where the browser gives it an empty body', async () => {
    const empty = { ok: true, status: 204, headers: new Headers(), body: new ReadableStream() }
    vi.stubGlobal('Response', Strict)
    vi.stubGlobal('fetch', async () => ({ ...empty, arrayBuffer: async () => new ArrayBuffer(0) }))
    await expect(calls.removeCanal('mb')).resolves.toBeUndefined()
  })

  test('a redirect is not followed, and the time that is waited covers the body', async () => {
    const fetched = vi.fn(async () => Promise.reject(new TypeError('redirected')))
    vi.stubGlobal('fetch', fetched)
    await expect(getSession()).rejects.toBeInstanceOf(Unreachable)
    expect(fetched.mock.calls[0]).toMatchObject([{}, { redirect: 'error' }])
    const cut = new ReadableStream({ start: (stream) => stream.error(new DOMException('too long', 'TimeoutError')) })
    vi.stubGlobal('fetch', async () => new Response(cut, { headers: { 'Content-Type': 'application/json' } }))
    await expect(getSession()).rejects.toBeInstanceOf(Unreachable)
  })

  test('a lost token is fetched anew, and what was sent goes again with it', async () => {
    const seen = serve(({ method, headers }) => {
      if (method === 'GET') token('new')
      if (method === 'GET') return NOBODY
      return headers.get('X-CSRFToken') === 'new' ? { body: { id: 'v1' } } : problem(403, 'token-missing')
    })
    await calls.addCanal('c1', { name: 'MB2' } as unknown as Parameters<typeof calls.addCanal>[1])
    expect(seen.map(({ method, path }) => `${method} ${path}`)).toEqual([
      'POST cases/c1/canals',
      'GET session',
      'POST cases/c1/canals',
    ])
    expect(seen.at(-1)?.body).toEqual({ name: 'MB2' })
  })

  test('a token that is refused again refuses nothing for good', async () => {
    serve(({ method }) => (method === 'GET' ? { body: somebody('ines') } : problem(403, 'token-missing')))
    await expect(calls.submitPlan('v1')).rejects.toBeInstanceOf(Unreachable)
  })

  test('that nobody is signed in is an answer, with the time of the server', async () => {
    const tell = vi.fn()
    onAnswered(tell)
    serve(() => NOBODY)
    await expect(getSession()).resolves.toBeUndefined()
    expect(tell).toHaveBeenCalledOnce()
  })

  test.each([
    ['an empty answer of something in between', { status: 204 }],
    ['half an answer that asks to sign in', { ...NOBODY, status: 200, body: {} }],
  ])('%s does not say that nobody is signed in', async (_, answer) => {
    serve(() => answer)
    await expect(getSession()).rejects.toBeInstanceOf(Unreachable)
  })

  test('401 anywhere is told, 403 is not', async () => {
    const tell = vi.fn()
    onSignedOut(tell)
    serve(({ path }) => problem(path.startsWith('cases') ? 401 : 403, 'x'))
    await refused(calls.submitPlan('v1'))
    expect(tell).not.toHaveBeenCalled()
    await refused(getCase('c1'))
    expect(tell).toHaveBeenCalledOnce()
  })
})
