import { beforeEach, expect, test } from 'vitest'
import { Refused, Unreachable } from '@/api/problem'
import { ask, askAnew, cachedSignal, refresh, replace } from '@/store/cache/cached'
import { database, forgetCached, read } from '@/store/device/database'
import { personId } from '@/store/session/session'
import { signedIn } from './people'
import { until } from './until'

let turn = 0
/** A name of its own for each test: what is in memory outlives one. */
let name = ''

beforeEach(() => {
  turn += 1
  name = `cases ${turn}`
  signedIn('Priya')
})

const offline = () => Promise.reject(new Unreachable())
const refused = () => Promise.reject(new Refused(404, { detail: 'There is no such case here.' }))

function later<T>() {
  let answer: (value: T) => void = () => undefined
  const promise = new Promise<T>((resolve) => {
    answer = resolve
  })
  return { promise, answer }
}

test('an answer is shown and kept on the phone', async () => {
  await refresh(name, async () => ['a'])
  expect(cachedSignal(name).value).toMatchObject({ value: ['a'], state: 'fresh' })
  expect((await read('kept', personId(), name))?.value).toEqual(['a'])
})

test('without a connection the last copy is shown, with the time it was seen', async () => {
  const before = Date.now()
  await replace(name, ['seen'])
  await refresh(name, offline)
  const kept = cachedSignal(name).value
  expect(kept).toMatchObject({ value: ['seen'], state: 'offline' })
  expect(kept.at).toBeGreaterThanOrEqual(before)
})

test('without a connection and without a copy there is no value', async () => {
  await refresh(name, offline)
  expect(cachedSignal(name).value).toEqual({ state: 'offline' })
})

test('a refusal keeps what is shown and says why', async () => {
  await replace(name, ['seen'])
  await refresh(name, refused)
  expect(cachedSignal(name).value).toMatchObject({ value: ['seen'], state: 'failed' })
  expect(cachedSignal(name).value.problem?.message).toBe('There is no such case here.')
})

test('an answer to an older asking does not undo a newer one', async () => {
  const slow = later<string>()
  ask(name, () => slow.promise)
  askAnew(name, async () => 'new')
  await until(() => expect(cachedSignal(name).value.value).toBe('new'))
  slow.answer('old')
  await slow.promise
  expect(cachedSignal(name).value.value).toBe('new')
})

test('an answer that was on its way when something was put in place is dropped', async () => {
  const slow = later<string>()
  const first = refresh(name, () => slow.promise)
  await replace(name, 'put')
  slow.answer('old')
  await first
  expect(cachedSignal(name).value.value).toBe('put')
})

test('an answer for one person never becomes another’s', async () => {
  const slow = later<string>()
  const first = refresh(name, () => slow.promise)
  signedIn('Tom')
  slow.answer('of Priya')
  await first
  expect(cachedSignal(name).value.value).toBeUndefined()
  expect(await read('kept', personId(), name)).toBeUndefined()
  signedIn('Priya')
  expect(cachedSignal(name).value.value).toBe('of Priya')
})

test('signing out takes copies of one person away and leaves the other’s', async () => {
  await replace(name, 'of Priya')
  signedIn('Tom')
  await replace(name, 'of Tom')
  await forgetCached(personId())
  expect(await read('kept', personId(), name)).toBeUndefined()
  signedIn('Priya')
  expect((await read('kept', personId(), name))?.value).toBe('of Priya')
})

test('a fault of the program is not taken for a lost connection', async () => {
  const fault = () => Promise.reject(new TypeError('x is undefined'))
  await expect(refresh(name, fault)).rejects.toThrow('x is undefined')
})

test('a copy kept by an app that knew less is no copy', async () => {
  const old = { person: personId(), name, value: ['old'], at: Date.now(), version: 1 }
  await (await database()).put('kept', old)
  await refresh(name, offline)
  expect(cachedSignal(name).value).toEqual({ state: 'offline' })
})
