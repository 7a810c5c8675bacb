import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test, vi } from 'vitest'
import type { Asked, CaseShown } from '@/api/shapes'
import { ChangedMeanwhile } from '@/screens/case/plan/notices'
import { usePreview } from '@/store/cache/plans'
import { signedIn } from './people'
import { serve } from './server'
import { until } from './until'

beforeEach(() => signedIn('Priya'))

const of = { id: 'c', revision: 3 } as CaseShown
const asked = (size: number) => ({ choices: { canals: [{ canal: 'MB', final_size: size }] } }) as unknown as Asked

function Shown({ size }: { size: number }) {
  const { state, plan } = usePreview(of, asked(size))
  return <output>{`${state} ${JSON.stringify(plan ?? null)}`}</output>
}

/** A server that computes by giving back the size it was asked for. */
function computing() {
  const state = { online: true, asked: 0, sizes: [] as number[] }
  serve(({ body }) => {
    const size = (body as { choices: { canals: { final_size: number }[] } }).choices.canals[0]?.final_size ?? 0
    state.asked = size
    if (!state.online) return 'nothing'
    state.sizes.push(size)
    return { body: { canals: [size] } }
  })
  return state
}

const says = (text: string) => waitFor(() => expect(screen.getByRole('status').textContent).toBe(text))

test('choices made without a connection keep the last figures, and are computed once when it is back', async () => {
  const server = computing()
  const { rerender } = render(<Shown size={25} />)
  await says('computed {"canals":[25]}')
  server.online = false
  const [on, off] = [vi.spyOn(globalThis, 'addEventListener'), vi.spyOn(globalThis, 'removeEventListener')]
  const callsOf = (spy: typeof on | typeof off) => spy.mock.calls.filter(([kind]) => kind === 'online').length
  for (const size of [30, 35, 40]) {
    rerender(<Shown size={size} />)
    await waitFor(() => expect(server.asked).toBe(size))
    await says('offline {"canals":[25]}')
  }
  // The screen listens for the connection once it has been painted.
  await until(() => expect(callsOf(on) - callsOf(off)).toBe(1))
  server.online = true
  window.dispatchEvent(new Event('online'))
  await says('computed {"canals":[40]}')
  expect(server.sizes).toEqual([25, 40])
})

test('nothing is said while the case stands as it did', () => {
  const at = { revision: 3, version: 1 }
  const { container } = render(<ChangedMeanwhile made={at} now={at} onKeep={() => 0} onLeave={() => 0} />)
  expect(container.textContent).toBe('')
})

test.each([
  [{ revision: 4, version: 1 }, 'The case has changed since you made these choices.'],
  [{ revision: 4, version: 2 }, 'Plan 2 has come since you made these choices.'],
])('a case that went on meanwhile is told: %j', (now, sentence) => {
  const [keep, leave] = [vi.fn(), vi.fn()]
  render(<ChangedMeanwhile made={{ revision: 3, version: 1 }} now={now} onKeep={keep} onLeave={leave} />)
  expect(screen.getByRole('status').textContent).toContain(sentence)
  fireEvent.click(screen.getByRole('button', { name: 'Go on with mine' }))
  expect([keep.mock.calls.length, leave.mock.calls.length]).toEqual([1, 0])
  fireEvent.click(screen.getByRole('button', { name: 'Take the plan that stands' }))
  expect(leave.mock.calls.length).toBe(1)
})
