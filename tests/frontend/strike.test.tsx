import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { expect, test } from 'vitest'
import type { CanalShown } from '@/api/shapes'
import { Readings } from '@/screens/case/readings'
import { signedIn } from './people'
import { serve } from './server'

const AT = '2026-03-05T12:00:00Z'
const reading = (id: string, struck: object | null) => ({
  id,
  number: 1,
  at: AT,
  actor: { id: 's', name: 'Ines' },
  reading: { method: 'confirming_image', reference_point: 'MB cusp', set_mm: 16, tip_short_mm: 0 },
  struck,
})
const result = (working_length_mm: number) => ({
  method: 'confirming_image',
  working_length_mm,
  counts: true,
  why: 'w',
})

function canalWith(struck: object | null): CanalShown {
  const readings = [reading('r1', struck), reading('r2', null)]
  const length = { readings: struck ? [result(18)] : [result(16), result(18)] }
  return { id: 'c1', readings, junctions: [], length } as unknown as CanalShown
}

test('a reading is struck in two touches, the second says why', async () => {
  signedIn('Ines')
  const sent = serve(({ method }) => (method === 'POST' ? { body: { id: 'c1' } } : { body: { id: 'k1' } }))
  render(<Readings canal={canalWith(null)} caseId="k1" />)
  const [first] = screen.getAllByRole('button', { name: 'Strike' })
  if (!first) throw new Error('nothing to strike')
  fireEvent.click(first)
  expect(sent).toEqual([])
  fireEvent.click(screen.getByRole('button', { name: 'It is of another canal' }))
  await waitFor(() => expect(sent[0]).toMatchObject({ path: 'readings/r1/strike', body: { why: 'wrong_canal' } }))
})

test('one that was struck stays, with who, when and why, and what is left is paired with its own figures', async () => {
  signedIn('Ines')
  const sent = serve(({ method }) => (method === 'POST' ? { body: { id: 'c1' } } : { body: { id: 'k1' } }))
  const struck = { at: AT, by: { id: 'v', name: 'Dr Vale' }, why: 'wrong_canal' }
  const { container } = render(<Readings canal={canalWith(struck)} caseId="k1" />)
  expect(container.querySelector('del')?.textContent).toBe('Confirming image 16.0')
  expect(screen.getByText(/^Struck by Dr Vale, .*: it is of another canal\.$/)).toBeTruthy()
  fireEvent.click(screen.getByRole('button', { name: 'Strike' }))
  fireEvent.click(screen.getByRole('button', { name: 'It was mistyped' }))
  await waitFor(() => expect(sent[0]?.path).toBe('readings/r2/strike'))
})

test('a coordinator strikes nothing', () => {
  signedIn('Rosa', 'coordinator')
  render(<Readings canal={canalWith(null)} caseId="k1" />)
  expect(screen.queryAllByRole('button')).toEqual([])
})
