import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import type { CaseShown, Factor } from '@/api/shapes'
import { DifficultyFactors } from '@/screens/case/difficulty-factors'
import { signedIn } from './people'
import { serve } from './server'

const factor = (key: string, over: Partial<Factor> = {}): Factor => ({
  key,
  group: 'patient',
  title: `Invented ${key}`,
  levels: (['low', 'moderate', 'high'] as const).map((level) => ({
    code: `${key}:${level}`,
    level,
    says: `${key} is ${level}`,
  })),
  from_plan: false,
  source: 'Invented',
  know: 'from memory',
  ...over,
})
const of = { id: 'k1', setting: 'clinic', revision: 3, factors: ['one:moderate'] } as unknown as CaseShown
const factors = [factor('one'), factor('two', { group: 'tooth', from_plan: true })]

beforeEach(() => signedIn('Priya'))

test('each factor shows what was recorded; choosing another sends all that is recorded', async () => {
  const sent = serve(({ method }) => ({ body: method === 'GET' ? { results: factors } : of }))
  render(<DifficultyFactors of={of} />)
  const factor = (await screen.findByLabelText('Invented one')) as HTMLSelectElement
  expect(factor.value).toBe('one:moderate')
  expect(screen.getByText('Difficulty of the case: 1 recorded')).toBeTruthy()
  expect(screen.getByText('Worked out from the plan too; the higher level counts.')).toBeTruthy()
  fireEvent.change(screen.getByLabelText('Invented two'), { target: { value: 'two:high' } })
  await waitFor(() => expect(sent.some((s) => s.method === 'PATCH')).toBe(true))
  expect(sent.find((s) => s.method === 'PATCH')?.body).toEqual({ factors: ['one:moderate', 'two:high'] })
})

test('their source is told once, with how it is known', async () => {
  serve(() => ({ body: { results: factors } }))
  render(<DifficultyFactors of={of} />)
  expect(await screen.findAllByText('Invented')).toHaveLength(1)
  expect(screen.getByText(/Reference value, check/)).toBeTruthy()
})

test('a training block has no difficulty', () => {
  serve(() => 'nothing')
  const { container } = render(<DifficultyFactors of={{ ...of, setting: 'block' }} />)
  expect(container.textContent).toBe('')
})
