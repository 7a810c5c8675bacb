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

const tick = (label: string) => screen.queryByLabelText(label) as HTMLInputElement | null
const LABELS = ['Dam in place and tight', 'Already root-filled', 'Perforation suspected'] as const

beforeEach(() => signedIn('Priya'))

test('each yes or no has its label and is shown as charted; a tap sends that one alone', async () => {
  const sent = serve(() => ({ body: { ...of, isolated: true } }))
  render(<ToothFacts of={of} />)
  expect(LABELS.map((label) => tick(label)?.checked)).toEqual([false, true, false])
  fireEvent.click(screen.getByLabelText(LABELS[0]))
  await waitFor(() => expect(sent.some((s) => s.method === 'PATCH')).toBe(true))
  expect(sent.find((s) => s.method === 'PATCH')?.body).toEqual({ isolated: true })
})

test.each([
  ['extracted', [false, true, true]],
  ['block', [false, false, false]],
] as const)('of %s work only what there can be is asked', (setting, asked) => {
  serve(() => 'nothing')
  render(<ToothFacts of={{ ...of, setting }} />)
  expect(LABELS.map((label) => tick(label) !== null)).toEqual(asked)
})
