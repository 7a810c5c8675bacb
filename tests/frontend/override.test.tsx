import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import type { Caution, Override, VersionShown } from '@/api/shapes'
import { OverrideCaution } from '@/screens/review/override'
import { signedIn } from './people'
import { serve } from './server'

const of = { id: 'v1', case_id: 'k1' } as VersionShown
const caution = { code: 'wall-thin', canal: 'MB', severity: 'stop', may_override: true, overridden: null } as Caution
const standing: Override = {
  id: 'o1',
  code: 'wall-thin',
  canal: 'MB',
  reason: 'Measured on a second image.',
  final_size: null,
  supervisor: { id: 's', name: 'Dr Vale' },
  at: '2026-11-25T10:00:00Z',
  withdrawn_at: null,
  withdrawn_by: null,
}

beforeEach(() => signedIn('Dr Vale', 'supervisor'))

test('a stop is let pass with a reason, about this caution of this case', async () => {
  const sent = serve(({ method }) => (method === 'POST' ? { status: 201, body: standing } : 'nothing'))
  render(<OverrideCaution of={of} caution={caution} overrides={[]} />)
  fireEvent.click(screen.getByRole('button', { name: 'Let the work go on' }))
  fireEvent.click(screen.getByRole('button', { name: 'Let it pass, with this reason' }))
  expect(await screen.findByText('Fill this in.')).toBeTruthy()
  expect(sent).toHaveLength(0)
  fireEvent.input(screen.getByLabelText('Why the work may go on'), { target: { value: ' Measured. ' } })
  fireEvent.click(screen.getByRole('button', { name: 'Let it pass, with this reason' }))
  await waitFor(() => expect(sent[0]?.path).toBe('cases/k1/overrides'))
  expect(sent[0]?.body).toMatchObject({ code: 'wall-thin', canal: 'MB', reason: 'Measured.' })
})

test('what nobody may let pass offers nothing', () => {
  const { container } = render(<OverrideCaution of={of} caution={{ ...caution, may_override: false }} overrides={[]} />)
  expect(container.textContent).toBe('')
})

test('what was let pass says by whom and why, that the plan comes again, and can be taken back', async () => {
  const sent = serve(({ method }) => (method === 'POST' ? { body: standing } : 'nothing'))
  render(<OverrideCaution of={of} caution={caution} overrides={[standing]} />)
  expect(screen.getByText(/Let pass by Dr Vale/)).toBeTruthy()
  expect(screen.getByText(/Measured on a second image/)).toBeTruthy()
  expect(screen.getByText(/the student makes it again/)).toBeTruthy()
  fireEvent.click(screen.getByRole('button', { name: 'Take it back' }))
  await waitFor(() => expect(sent[0]?.path).toBe('overrides/o1/withdraw'))
})

test('one taken back no longer counts', () => {
  render(
    <OverrideCaution of={of} caution={caution} overrides={[{ ...standing, withdrawn_at: '2026-11-25T11:00:00Z' }]} />,
  )
  expect(screen.getByRole('button', { name: 'Let the work go on' })).toBeTruthy()
})

test('a wide canal is let pass with the size that is chosen', async () => {
  const sent = serve(({ method }) => (method === 'POST' ? { status: 201, body: standing } : 'nothing'))
  const kit = { instruments: [40, 50].map((size) => ({ size, taper: 3, use: 'shaping' })) }
  const wide = { ...caution, code: 'wide-canal' }
  render(<OverrideCaution of={{ ...of, given: { kit } } as VersionShown} caution={wide} overrides={[]} />)
  fireEvent.click(screen.getByRole('button', { name: 'Choose the final size' }))
  fireEvent.input(screen.getByLabelText('Why the work may go on'), { target: { value: 'Own cone.' } })
  fireEvent.click(screen.getByRole('button', { name: 'Let it pass, with this reason' }))
  expect(await screen.findByText('Fill this in.')).toBeTruthy()
  expect(sent).toHaveLength(0)
  fireEvent.change(screen.getByLabelText('Final size for MB'), { target: { value: '50' } })
  fireEvent.click(screen.getByRole('button', { name: 'Let it pass, with this reason' }))
  await waitFor(() => expect(sent[0]?.body).toMatchObject({ code: 'wide-canal', final_size: 50, reason: 'Own cone.' }))
})

test('the size that was chosen stands with who chose it', () => {
  const chosen = { ...standing, code: 'wide-canal', final_size: 50 }
  render(<OverrideCaution of={of} caution={{ ...caution, code: 'wide-canal' }} overrides={[chosen]} />)
  expect(screen.getByText(/Final size 50\./)).toBeTruthy()
})
