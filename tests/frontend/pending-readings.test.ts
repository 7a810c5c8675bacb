import { beforeEach, expect, test } from 'vitest'
import type { Reading } from '@/api/shapes'
import { countWaiting, dropPendingReading, pendingReadingsOf, takeReading } from '@/store/outbox/pending-readings'
import { send } from '@/store/outbox/sender'
import { signedIn } from './people'
import { problem, type Sent, serve } from './server'
import { until } from './until'

let turn = 0
/** A case of its own for each test: what is in memory outlives one. */
let CASE = ''
let online = false
let stored: string[] = []
let refusing = ''

beforeEach(() => {
  turn += 1
  CASE = `case ${turn}`
  signedIn('Priya')
  online = false
  stored = []
  refusing = ''
  serve(answer)
})

/** A server that stores each reading once by its id. */
function answer({ method, body }: Sent) {
  if (!online) return 'nothing'
  if (method === 'GET') return { body: { id: CASE, revision: 1, canals: [] } }
  const { id } = body as { id: string }
  if (id === refusing)
    return problem(422, 'not-usable', [{ pointer: '#/reading/tooth_mm', detail: 'No tooth is as long.' }])
  if (!stored.includes(id)) stored.push(id)
  return { body: { id: 'mb' } }
}

const reading = (id: string, canal = 'mb') =>
  takeReading(CASE, { canal, id, reading: { method: 'direct_sight' } as unknown as Reading })
const ids = () => pendingReadingsOf(CASE).value.map((pending) => pending.id)

/** As often as it needs: what is asked for while a try is just failing is not sent by it. */
const sendUntil = (look: () => void) =>
  until(async () => {
    await send()
    look()
  })

test('with a connection a reading goes to the server and is not kept', async () => {
  online = true
  expect(await reading('a')).toBe('sent')
  expect([stored, await countWaiting()]).toEqual([['a'], 0])
})

test('readings without a connection are sent afterwards, once, in the order in which they were taken', async () => {
  for (const id of ['b', 'a', 'c']) expect(await reading(id)).toBe('kept')
  expect([ids(), await countWaiting()]).toEqual([['b', 'a', 'c'], 3])
  online = true
  await sendUntil(() => expect([stored, ids()]).toEqual([['b', 'a', 'c'], []]))
  await send()
  expect(stored).toEqual(['b', 'a', 'c'])
})

test('a later reading of the canal does not overtake one that waits', async () => {
  await reading('a')
  online = true
  expect(await reading('b')).toBe('kept')
  await sendUntil(() => expect(stored).toEqual(['a', 'b']))
})

test('what the server will not take stays with its sentence until it is thrown away; the others are sent', async () => {
  for (const id of ['a', 'b']) await reading(id)
  refusing = 'a'
  online = true
  await sendUntil(() => expect(stored).toEqual(['b']))
  const [pending] = pendingReadingsOf(CASE).value
  expect(pending?.refused).toBe('No tooth is as long.')
  if (pending) await dropPendingReading(pending)
  expect(ids()).toEqual([])
})

test('an answer that was lost stores nothing twice', async () => {
  await reading('a')
  online = true
  serve((sent) => {
    answer(sent)
    return 'nothing'
  })
  await sendUntil(() => expect(stored).toEqual(['a']))
  expect(ids()).toEqual(['a'])
  serve(answer)
  await sendUntil(() => expect(ids()).toEqual([]))
  expect(stored).toEqual(['a'])
})

test('another person on the phone neither sees nor sends them', async () => {
  await reading('a')
  signedIn('Tom')
  online = true
  await send()
  expect([stored, ids(), await countWaiting()]).toEqual([[], [], 0])
  signedIn('Priya')
  await until(() => expect(ids()).toEqual(['a']))
})
