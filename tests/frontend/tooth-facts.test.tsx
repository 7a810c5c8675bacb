import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import type { CaseShown } from '@/api/shapes'
import { ToothFacts } from '@/screens/case/tooth-facts'
import { signedIn } from './people'
import { serve } from './server'

const of = {
  id: 'k1',
  setting: 'clinic',
  revision: 3,
  isolated: false,
  root_filled: true,
  perforation: false,
  anatomy: 'usual',
} as unknown as CaseShown

const ticks = () => screen.queryAllByRole('checkbox') as HTMLInputElement[]

beforeEach(() => signedIn('Priya'))

test('each yes or no has its label and is shown as charted; a tap sends that one alone', async () => {
  const sent = serve(() => ({ body: { ...of, isolated: true } }))
  render(<ToothFacts of={of} />)
  expect(ticks().map((tick) => tick.checked)).toEqual([false, true, false])
  expect(screen.getByLabelText('Already root-filled')).toBe(ticks()[1])
  expect(screen.getByLabelText('Perforation suspected')).toBe(ticks()[2])
  fireEvent.click(screen.getByLabelText('Dam in place and tight'))
  await waitFor(() => expect(sent.some((s) => s.method === 'PATCH')).toBe(true))
  expect(sent.find((s) => s.method === 'PATCH')?.body).toEqual({ isolated: true })
})

test.each([
  ['extracted', 2],
  ['block', 0],
] as const)('of %s work only what there can be is asked: %i', (setting, asked) => {
  serve(() => 'nothing')
  render(<ToothFacts of={{ ...of, setting }} />)
  expect(ticks()).toHaveLength(asked)
  expect(screen.queryByLabelText('Dam in place and tight')).toBeNull()
})
