import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { type AppFile, keepWhole } from '@/worker/whole'

// The judge of a digest is another implementation of SHA-256 (FIPS 180-4): Node's.

const TEXTS: Record<string, string> = { '/': '<div id="app">', '/assets/app.js': 'start()' }
const FILES = Object.entries(TEXTS).map(
  ([path, text]): AppFile => [path, createHash('sha256').update(text).digest('hex')],
)

/** What lies in the cache after files were asked for from something that answers one path otherwise, always or at first. */
async function kept(other: Record<string, Response> = {}, { once = false } = {}) {
  const cache = new Map<string, string>()
  const put = async (path: RequestInfo | URL, answer: Response) => void cache.set(String(path), await answer.text())
  const asked: RequestInit[] = []
  const ask = async (path: string, how: RequestInit) => {
    asked.push(how)
    const answer = other[path]?.clone() ?? new Response(TEXTS[path])
    if (once) delete other[path]
    return answer
  }
  const failed = await keepWhole({ put }, FILES, ask).then(
    () => undefined,
    (error: Error) => error.message,
  )
  return { cache: Object.fromEntries(cache), failed, asked }
}

test('an app is kept as it was built, from the browser’s own copies and without a redirect', async () => {
  const { cache, failed, asked } = await kept()
  expect([cache, failed]).toEqual([TEXTS, undefined])
  expect(asked.map(({ redirect, cache }) => [redirect, cache])).toEqual([
    ['error', 'no-cache'],
    ['error', 'default'],
  ])
})

test('a copy of the browser that is another one is passed by', async () => {
  const { cache, failed, asked } = await kept({ '/assets/app.js': new Response('start(1)') }, { once: true })
  expect([cache, failed]).toEqual([TEXTS, undefined])
  expect(asked.map(({ cache }) => cache)).toEqual(['no-cache', 'default', 'reload'])
})

test.each([
  ['a page in between', new Response('<h1>Sign in to this network</h1>')],
  ['a file of another version', new Response('start(1)')],
  ['a refusal', new Response(TEXTS['/assets/app.js'], { status: 403 })],
])('with %s for one file nothing is kept', async (_, answer) => {
  expect(await kept({ '/assets/app.js': answer })).toMatchObject({
    cache: {},
    failed: 'not as it was built: /assets/app.js',
  })
})
