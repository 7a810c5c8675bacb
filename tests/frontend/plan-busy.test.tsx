import { fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { previewPlan } from '@/api/calls'
import type { Asked, CaseShown } from '@/api/shapes'
import { Sent } from '@/parts/sent'
import { Refusal } from '@/screens/case/plan/notices'
import { usePreview } from '@/store/cache/plans'
import { useSending } from '@/store/forms/sending'
import { signedIn } from './people'
import { problem, serve } from './server'
import { until } from './until'

// Its clock stands until a test moves it on: nothing here waits.

const WAIT_S = 7

beforeEach(() => {
  signedIn('Priya')
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
})

afterEach(() => vi.useRealTimers())

/** A server that works for others until `free`. */
function crowded() {
  const server = { free: false, asked: 0 }
  serve(() => {
    server.asked += 1
    return server.free ? { body: { canals: [30] } } : { ...problem(503, 'busy'), waitS: WAIT_S }
  })
  return server
}

const of = { id: 'c', revision: 3 } as CaseShown
const asked = { choices: { canals: [] } } as unknown as Asked

function Shown() {
  const preview = usePreview(of, asked)
  return (
    <>
      <output>{`${preview.state} ${JSON.stringify(preview.plan ?? null)}`}</output>
      <Refusal preview={preview} />
    </>
  )
}

const OTHERS_FIRST = /^The server computes for others first/

test('a plan that gets no turn says so, and follows by itself once the server has time', async () => {
  const server = crowded()
  render(<Shown />)
  await vi.advanceTimersByTimeAsync(0)
  await until(() => screen.getByText(OTHERS_FIRST))
  expect(screen.getByText('computing null')).toBeTruthy()
  await vi.advanceTimersByTimeAsync(WAIT_S * 1000 - 1)
  expect(server.asked).toBe(1)
  server.free = true
  await vi.advanceTimersByTimeAsync(1)
  await until(() => screen.getByText('computed {"canals":[30]}'))
  expect(screen.queryByText(OTHERS_FIRST)).toBeNull()
  expect(server.asked).toBe(2)
})

test('a plan that is left while it waits is asked for no more', async () => {
  const server = crowded()
  const { unmount } = render(<Shown />)
  await vi.advanceTimersByTimeAsync(0)
  await until(() => screen.getByText(OTHERS_FIRST))
  unmount()
  await vi.advanceTimersByTimeAsync(WAIT_S * 1000)
  expect(server.asked).toBe(1)
})

test('an answer that takes longer than usual is said to follow', async () => {
  const answers: ((body: { body: unknown }) => void)[] = []
  serve(() => new Promise((resolve) => answers.push(resolve)))
  render(<Shown />)
  await vi.advanceTimersByTimeAsync(0)
  await until(() => expect(answers).toHaveLength(1))
  expect(screen.queryByText(OTHERS_FIRST)).toBeNull()
  await vi.advanceTimersByTimeAsync(3000)
  await until(() => screen.getByText(OTHERS_FIRST))
  for (const answer of answers) answer({ body: { canals: [25] } })
  await until(() => screen.getByText('computed {"canals":[25]}'))
  expect(screen.queryByText(OTHERS_FIRST)).toBeNull()
})

function Form() {
  const [sending, run] = useSending()
  const send = () => void run(() => previewPlan('c', asked))
  return (
    <>
      <output>{sending.state}</output>
      <Sent sending={sending} again={send} />
      <button type="button" disabled={sending.state === 'busy'} onClick={send}>
        Approve
      </button>
    </>
  )
}

const state = () => screen.getAllByRole('status').map((of) => of.textContent)
const approve = () => fireEvent.click(screen.getByRole('button', { name: 'Approve' }))

test('what gets no turn when it is sent is sent again by itself', async () => {
  const server = crowded()
  render(<Form />)
  approve()
  await until(() => screen.getByText(/^The server works for others/))
  expect(state()[0]).toBe('busy')
  server.free = true
  await vi.advanceTimersByTimeAsync(WAIT_S * 1000)
  await until(() => expect(state()).toEqual(['idle']))
  expect(server.asked).toBe(2)
})

test('who stops waiting may send it again later', async () => {
  const server = crowded()
  render(<Form />)
  approve()
  fireEvent.click(await until(() => screen.getByRole('button', { name: 'Stop waiting' })))
  await until(() => expect(state()).toEqual(['idle']))
  await vi.advanceTimersByTimeAsync(WAIT_S * 1000)
  expect(server.asked).toBe(1)
  server.free = true
  approve()
  await until(() => expect(server.asked).toBe(2))
  await until(() => expect(state()).toEqual(['idle']))
})
