import { render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Running, Waiting } from '@/api/shapes'
import { Worklist } from '@/screens/worklist/worklist'
import { signedIn } from './people'
import { serve } from './server'

const common = { patient_alias: 'Reed 12', tooth: { iso: '26' }, student: { id: 's', name: 'Priya' } }
const plan = {
  ...common,
  version_id: 'v1',
  case_id: 'c1',
  number: 1,
  asks: 'first',
  stops: 0,
  cautions: 0,
  waiting_s: 60,
}
const chair = { ...common, case_id: 'c2', halted: false, canals: [], now: null, step_s: null, waiting_s: 60 }
const MORE = '/api/v1/programmes/p1/worklist?cursor=c'
const LEFT_OUT = 'The 1 most urgent; there are more.'

function shown({ plans = false, chairs = false }) {
  serve(({ path }) =>
    path.endsWith('/worklist')
      ? { body: { results: [plan as unknown as Waiting], next: plans ? MORE : null } }
      : { body: { results: [chair as unknown as Running], next: chairs ? MORE : null } },
  )
  render(<Worklist />)
}

const headings = async () => [
  await screen.findByText('Plans to decide on'),
  await screen.findByText('Waits at the chair'),
]

// Somebody else each time: what one test was shown is not there in the next.
beforeEach(({ task }) => signedIn(task.name, 'supervisor'))

test('all that waits is listed: nothing is said of more', async () => {
  shown({})
  await headings()
  expect(screen.queryByText(LEFT_OUT)).toBeNull()
})

test.each([
  ['plans that wait', { plans: true }, '.plans-that-wait'],
  ['chairs, also where all of them wait', { chairs: true }, '.running-waits'],
])('a list that is cut off says so: %s', async (_, more, under) => {
  shown(more)
  expect((await screen.findByText(LEFT_OUT)).closest('section')?.matches(under)).toBe(true)
})

test.each(['worklist', 'running-work'])('what has come stays where it is, whichever comes last: %s', async (last) => {
  const going = { ...chair, case_id: 'c3', waiting_s: null }
  let answer: () => void = () => undefined
  const held = new Promise<void>((go) => {
    answer = go
  })
  serve(async ({ path }) => {
    if (path.endsWith(last)) await held
    else setTimeout(answer)
    return { body: { results: path.endsWith('/worklist') ? [plan] : [chair, going], next: null } }
  })
  const { container } = render(<Worklist />)
  const drawn: (string | null)[][] = []
  const watcher = new MutationObserver(() => {
    drawn.push([...container.querySelectorAll('h2, .entry')].map((each) => each.textContent))
  })
  watcher.observe(container, { subtree: true, childList: true })
  await screen.findByText('At the chair now')
  watcher.disconnect()
  expect(drawn.at(-1)).toHaveLength(6)
  for (const [i, after] of drawn.slice(1).entries()) expect(after.slice(0, drawn[i]?.length)).toEqual(drawn[i])
})

afterEach(() => vi.useRealTimers())

test.each([5000, 8000])(
  'an emergency shows with the first answer to what was asked after it, where answers take %i ms',
  async (takes_ms) => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'] })
    let halted = false
    let asked = 0
    serve(async ({ path }) => {
      const chairs = path.endsWith('/running-work')
      asked += Number(chairs)
      const results = chairs && halted ? [{ ...chair, halted: true }] : []
      await new Promise((resolve) => setTimeout(resolve, takes_ms))
      return { body: { results, next: null } }
    })
    render(<Worklist />)
    // The third answer is on its way when somebody tells of the emergency.
    await vi.advanceTimersByTimeAsync(2.5 * takes_ms)
    halted = true
    await vi.advanceTimersByTimeAsync(1.6 * takes_ms)
    vi.useRealTimers()
    expect(await screen.findByText('HALTED')).toBeTruthy()
    // One asking at a time, for three groups of chairs.
    expect(asked).toBeLessThanOrEqual(5)
  },
)

test('who took a case over is named until it is given back', async () => {
  let taken_over: object | null = { id: 'v', name: 'Dr Vale' }
  serve(({ path }) => ({
    body: { results: path.endsWith('/running-work') ? [{ ...chair, taken_over }] : [], next: null },
  }))
  const { unmount } = render(<Worklist />)
  expect(await screen.findByText('Dr Vale has taken over')).toBeTruthy()
  unmount()
  taken_over = null
  render(<Worklist />)
  await waitFor(() => expect(screen.queryByText('Dr Vale has taken over')).toBeNull())
  expect(screen.getByText('Priya')).toBeTruthy()
})
