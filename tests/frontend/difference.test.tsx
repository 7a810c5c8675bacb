import { render, screen } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { compare } from '@/parts/difference/compare'
import { DifferenceView } from '@/parts/difference/difference-view'
import { canal, plan } from './sample-plan'

test('a plan does not differ from itself', () => {
  expect(compare(plan(4), plan(4))).toEqual([])
})

test('a larger final size is told for its canal, with what else moved', () => {
  const after = plan(3)
  after.canals[2] = canal('DB', 17, { final_size: 45 })
  after.tray_list = []
  expect(compare(plan(3), after)).toEqual([
    { canal: null, what: 'laid out', from: '10/.02', to: 'none' },
    { canal: 'DB', what: 'final size', from: '40/.03', to: '45/.03' },
  ])
})

test('a stop that moved is told with its instrument and phase, an unmoved one is not', () => {
  const after = plan(1)
  after.stop_table = after.stop_table.map((row) => ({
    ...row,
    stops:
      row.phase === 'Flare' ? [] : row.stops.map((s) => ({ ...s, stop_mm: row.phase === 'Ascend' ? 17 : s.stop_mm })),
  }))
  expect(compare(plan(1), after)).toEqual([
    { canal: 'MB', what: 'stop of 25/.09, flare', from: '9.5', to: 'none' },
    { canal: 'MB', what: 'stop of 40/.03, ascend', from: '18.5', to: '17.0' },
  ])
})

test('a canal that came, a caution that went', () => {
  const before = plan(2)
  const after = plan(3)
  after.cautions = []
  expect(compare({ ...before, stop_table: after.stop_table }, after)).toEqual([
    { canal: 'ML', what: 'cautions', from: 'ML joins MB.', to: 'none' },
    { canal: 'DB', what: 'canal', from: 'none', to: 'added' },
  ])
})

test('old and new are told apart without colour', () => {
  render(<DifferenceView changes={[{ canal: 'MB', what: 'final size', from: '30/.04', to: '35/.04' }]} />)
  expect(screen.getByText('30/.04').tagName).toBe('DEL')
  expect(screen.getByText('35/.04').tagName).toBe('INS')
})
