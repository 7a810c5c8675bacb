import { fireEvent, render, screen } from '@testing-library/preact'
import { expect, test } from 'vitest'
import type { Length } from '@/api/shapes'
import { LengthsBoard, type MeasuredCanal } from '@/parts/lengths-board/lengths-board'

type State = Length['state']
type Read = readonly [method: string, working_length_mm: number]

function canal(name: string, state: State, stop_mm: number | null, readings: readonly Read[] = []): MeasuredCanal {
  const length = {
    state,
    stop_mm,
    estimate_mm: null,
    estimated: state === 'estimated' ? { least_mm: 15.5, most_mm: 16.5 } : null,
    rests_on: readings.map(([method]) => method),
    readings: readings.map(([method, working_length_mm]) => ({ method, counts: true, why: '', working_length_mm })),
  } as unknown as Length
  return { name, reference_point: `${name} cusp`, length, state, usual_mm: 20, waits: false }
}

const CANALS = [
  canal('MB1', 'settled', 20),
  canal('MB2', 'estimated', 15),
  canal('DB', 'missing', null),
  canal('P', 'to_settle', 10, [
    ['confirming_image', 10.8],
    ['apex_locator', 10],
  ]),
]

const draw = (onPick: (name: string) => void = () => undefined) =>
  render(<LengthsBoard canals={CANALS} picked="DB" onPick={onPick} />)
const drawn = (state: State) => document.querySelector(`[data-state="${state}"]`)
const endsOf = (state: State) =>
  [...(drawn(state)?.querySelectorAll('.end') ?? [])].map((end) => Number(end.getAttribute('y1')))

test('each canal ends on one axis at its length, and is as firmly drawn as it is known', () => {
  draw()
  const [settled = 0, estimated = 0, shorter = 0] = (['settled', 'estimated', 'to_settle'] as const).map(
    (state) => endsOf(state)[0],
  )
  // From 20 to 15 to 10 mm it is the same way twice.
  expect(settled - estimated).toBeCloseTo(estimated - shorter, 6)
  expect(settled).toBeGreaterThan(estimated)
  expect(endsOf('missing')).toEqual([])
  const hatched = (['settled', 'estimated', 'missing', 'to_settle'] as const).map((state) =>
    drawn(state)?.querySelector('.body')?.getAttribute('fill')?.startsWith('url(#hatch'),
  )
  expect(hatched).toEqual([undefined, true, undefined, true])
})

test('an estimate is called one; readings that disagree are both there, and their mean is not', () => {
  draw()
  const says = [...document.querySelectorAll('.end-number')].map((number) => number.textContent)
  expect(says).toEqual(['20.0', '≈ 15.0', 'measure', '10.0', '≠ 10.8'])
  expect(endsOf('to_settle')).toHaveLength(2)
  expect(document.querySelectorAll('[data-drawn=sign][data-severity=caution]')).toHaveLength(1)
})

test('a column is one of a group, says its state and its length, and selects its canal', () => {
  const picked: string[] = []
  draw((name) => void picked.push(name))
  const columns = screen.getAllByRole('radio')
  expect(columns.map((column) => column.getAttribute('aria-label'))).toEqual([
    'MB1: settled, 20.0 mm',
    'MB2: estimated, ≈ 15.0 mm',
    'DB: no length yet',
    'P: to be settled, 10.0 ≠ 10.8 mm',
  ])
  expect(columns.map((column) => (column as HTMLInputElement).checked)).toEqual([false, false, true, false])
  fireEvent.click(screen.getByRole('radio', { name: /^P:/ }))
  fireEvent.keyDown(screen.getByRole('radio', { name: /^MB1:/ }), { key: 'Enter' })
  expect(picked).toEqual(['P', 'MB1'])
})
