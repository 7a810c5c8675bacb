import { cleanup, render, screen } from '@testing-library/preact'
import { afterEach, expect, it } from 'vitest'
import type { VersionListed } from '@/api/shapes'
import { Decision } from '@/panels/plan/decision'

afterEach(cleanup)

const reviewed = {
  number: 2,
  reviews: [
    {
      id: 'r',
      decision: 'approved',
      asked: 1,
      supervisor: { id: 'v', name: 'Dr Vale' },
      at: '2026-03-05T14:20:00Z',
      note: 'Go on.',
      remarks: [],
      acknowledged: [],
    },
  ],
  revocations: [],
} as unknown as VersionListed

const withdrawn = (asked: number) => ({
  ...reviewed,
  revocations: [
    { id: 'w', asked, by: { id: 'c', name: 'Rosa' }, at: '2026-03-05T15:00:00Z', reason: 'Another tooth.' },
  ],
})

it('says who withdrew the approval and why, not that the plan has changed', () => {
  render(<Decision of={withdrawn(1)} counts={false} />)
  expect(screen.getByText(/Approval withdrawn by Rosa/).closest('p')?.textContent).toContain('Another tooth.')
  expect(screen.queryByText(/the plan has changed/)).toBeNull()
})

it('says nothing of an earlier asking that was approved anew', () => {
  const again = { ...withdrawn(1), reviews: reviewed.reviews.map((review) => ({ ...review, asked: 2 })) }
  render(<Decision of={again} counts />)
  expect(screen.queryByText(/withdrawn/)).toBeNull()
  expect(screen.getByText(/Plan 2 approved by Dr Vale/)).toBeTruthy()
})
