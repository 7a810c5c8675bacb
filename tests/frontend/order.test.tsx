import { render, screen } from '@testing-library/preact'
import { describe, expect, test } from 'vitest'
import type { SheetStep } from '@/api/shapes'
import { OrderOfWork } from '@/parts/order/order-of-work'
import { workOf } from '@/parts/order/work'
import { tabledPath } from '@/parts/rationale/paths'
import { expectation } from './sample-expected'
import { canal, instrument } from './sample-plan'

function step(id: string, over: Partial<SheetStep> = {}): SheetStep {
  const none = { instrument: null, stop_um: null, target: null, shorter_than: null, hold_point: null, irrigant: null }
  return {
    kind: 'do',
    id,
    action: 'instrument',
    phase: 'descending',
    exits: {},
    ...none,
    volume_ml: null,
    needle_at_most_um: null,
    say: '',
    waits_for: [],
    ...over,
  }
}

const nodes = Object.fromEntries(
  [
    step('a', { instrument: '35/.03 continuous', stop_um: 17_500, target: 'to_resistance', say: 'No push.' }),
    step('b', { action: 'irrigate', volume_ml: 2, needle_at_most_um: 11_000 }),
    step('c', { action: 'recapitulate', instrument: '10/.02 hand', stop_um: 17_500 }),
    step('d', { action: 'sign_off', phase: 'length', hold_point: 'length' }),
  ].map((node) => [node.id, node]),
)
const walked = canal('MB', 17.5, {
  run_sheet: { canal: 'MB', start: 'a', nodes, walked_before: null, schema_version: 1 },
  expected_path: ['a', 'b', 'c', 'd', 'a', 'b'],
  withheld: [{ from_phase: 'confirm', code: 'x', says: 'No length.' }],
})
test('why a stop is where it is: as the stop table says it, else by where it lies', () => {
  const rows = [
    { instrument: { key: '35/.03' }, stops: [{ canal: 'MB', stop_mm: 16.5, why: 'stops.above_final' }] },
    { instrument: { key: '25/.10' }, stops: [{ canal: 'MB', stop_mm: 9.5, why: '' }] },
  ]
  expect(tabledPath(rows, walked, '35/.03', 16.5)).toBe('stops.above_final')
  expect(tabledPath(rows, walked, '35/.03', 17.5)).toBe('stops.full')
  expect(tabledPath(rows, walked, '25/.10', 9.5)).toBe('stops.coronal')
})

const instruments = [instrument(35, 3, 'continuous', 'green'), instrument(10, 2, 'hand', 'purple')]

test('irrigation and recapitulation stand with their instrument; a phase walked again is the next pass', () => {
  expect(workOf(walked).map((p) => [p.phase, p.pass, p.steps.map((s) => s.after.map((n) => n.id))])).toEqual([
    ['descending', 1, [['b', 'c']]],
    ['length', 1, [[]]],
    ['descending', 2, [['b']]],
  ])
})

test('each step says instrument, stop and target, and what follows it', () => {
  render(<OrderOfWork canal={walked} instruments={instruments} stops={[]} expected />)
  expect(screen.getAllByText('to resistance')).toHaveLength(2)
  expect(screen.getByText('then irrigate 2 mL, needle to 11.0 at most, 10/.02 to 17.5')).toBeTruthy()
  expect(screen.getByText('Hold point: length')).toBeTruthy()
  expect(screen.getByText(/pass 2/)).toBeTruthy()
})

test('what is withheld says from where and why', () => {
  render(<OrderOfWork canal={walked} instruments={instruments} stops={[]} expected />)
  expect(screen.getByText('Withheld from Confirm: No length.')).toBeTruthy()
})

describe('what is expected', () => {
  const steps = [
    { node: 'a', pass_number: 1, instrument: '35/.03 continuous', depth_mm: 15.1, low_mm: 14.6, high_mm: 15.6 },
    { node: 'a', pass_number: 2, instrument: '35/.03 continuous', depth_mm: 16.4, felt: 'as_expected' as const },
  ]
  const forecast = { ...walked, expectation: expectation(17.5, steps) }

  test('stands at its own pass of a step; a recorded depth says so', () => {
    render(<OrderOfWork canal={forecast} instruments={instruments} stops={[]} expected />)
    expect(screen.getByText('expected 15.1 (14.6–15.6)')).toBeTruthy()
    expect(screen.getByText('recorded 16.4, as expected')).toBeTruthy()
    expect(screen.queryByText(/as if straight/)).toBeNull()
  })

  test('of a bent canal says beside each depth that it is of a straight one', () => {
    const bent = steps.map((step) => ({ ...step, as_if_straight: true }))
    render(
      <OrderOfWork
        canal={{ ...forecast, expectation: expectation(18, bent) }}
        instruments={instruments}
        stops={[]}
        expected
      />,
    )
    expect(screen.getByText('expected 15.1 (14.6–15.6)')).toBeTruthy()
    expect(screen.getAllByText('computed as if straight')).toHaveLength(1)
    expect(screen.getByText('recorded 16.4, as expected')).toBeTruthy()
  })

  test('is kept out of sight where it is not wanted', () => {
    render(<OrderOfWork canal={forecast} instruments={instruments} stops={[]} expected={false} />)
    expect(screen.queryByText(/expected/)).toBeNull()
  })
})
