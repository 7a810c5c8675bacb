import { fireEvent, render, screen } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { LengthsBoard, type MeasuredCanal } from '@/parts/lengths-board/lengths-board'

const NONE = { length_mm: null, between: null, usual_mm: 20, waits: false }
const CANALS: MeasuredCanal[] = [
  { ...NONE, id: '1', name: 'MB1', state: 'settled', length_mm: 20 },
  { ...NONE, id: '2', name: 'MB2', state: 'estimated', length_mm: 15, between: { least_mm: 15.5, most_mm: 16.5 } },
  { ...NONE, id: '3', name: 'DB', state: 'not measured' },
  { ...NONE, id: '4', name: 'P', state: 'unsettled', length_mm: 10 },
]

const drawn = (state: string) => document.querySelector(`[data-state="${state}"]`)
const endOf = (state: string) => Number(drawn(state)?.querySelector('.end')?.getAttribute('y1'))

test('each canal ends on one axis at its length, and is as firmly drawn as it is known', () => {
  render(<LengthsBoard canals={CANALS} />)
  const [settled, estimated, unsettled] = ['settled', 'estimated', 'unsettled'].map(endOf) as [number, number, number]
  // From 20 to 15 to 10 mm it is the same way twice.
  expect(settled - estimated).toBeCloseTo(estimated - unsettled, 6)
  expect(settled).toBeGreaterThan(estimated)
  expect(drawn('not-measured')?.querySelector('.end')).toBe(null)
  const hatched = ['settled', 'estimated', 'not-measured', 'unsettled'].map((state) =>
    drawn(state)?.querySelector('.body')?.getAttribute('fill')?.startsWith('url(#hatch'),
  )
  expect(hatched).toEqual([undefined, true, undefined, true])
  expect([...document.querySelectorAll('.says')].map((says) => says.textContent)).toEqual([
    '20.0',
    '≈ 15.0',
    'measure',
    '≈ 10.0',
  ])
  expect(screen.queryByRole('button')).toBe(null)
})

test('a canal that is touched is measured', () => {
  const opened: string[] = []
  render(<LengthsBoard canals={CANALS} onOpen={(id) => opened.push(id)} />)
  fireEvent.click(screen.getByRole('button', { name: 'Measure DB' }))
  expect(opened).toEqual(['3'])
})
