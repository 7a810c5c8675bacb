import { afterEach, describe, expect, test, vi } from 'vitest'
import * as calls from '@/api/calls'
import { onSignedOut } from '@/api/client'
import { Refused, Unreachable } from '@/api/problem'
import { getSession, signIn } from '@/api/session'
import { problem, serve } from './server'

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
    const seen = serve(() => ({ body: {} }))
    token('one')
    await calls.submitPlan('v1')
    token('two')
    await calls.submitPlan('v1')
    expect(seen.map((s) => s.headers.get('X-CSRFToken'))).toEqual(['one', 'two'])
  })

  test('a decision carries the hash that was on the screen as a strong tag', async () => {
    const seen = serve(() => ({ status: 201, body: {} }))
    await calls.review('v1', 'abc', { id: 'r1', decision: 'approved', note: '', remarks: [] })
    expect(seen[0]?.headers.get('If-Match')).toBe('"abc"')
    expect(seen[0]?.path).toBe('plan-versions/v1/reviews')
  })

  test('without a token sign-in asks for one first', async () => {
    const seen = serve(({ method }) => {
      if (method === 'GET') token('fresh')
      return method === 'GET' ? problem(401, 'not-authenticated') : { body: {} }
    })
    await signIn('ines', 'secret')
    expect(seen.map((s) => s.method)).toEqual(['GET', 'POST'])
    expect(seen[1]?.headers.get('X-CSRFToken')).toBe('fresh')
  })
})

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
    const error = await refused(calls.getCase('c1'))
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

  test('an answer that is no problem details is still a refusal', async () => {
    serve(() => ({ status: 502, body: 'Bad gateway' }))
    expect((await refused(getSession())).status).toBe(502)
  })

  test('401 anywhere is told, 403 is not', async () => {
    const tell = vi.fn()
    onSignedOut(tell)
    serve(({ path }) => problem(path.startsWith('cases') ? 401 : 403, 'x'))
    await refused(calls.submitPlan('v1'))
    expect(tell).not.toHaveBeenCalled()
    await refused(calls.getCase('c1'))
    expect(tell).toHaveBeenCalledOnce()
  })
})
