import { render, screen, within } from '@testing-library/preact'
import { expect, test } from 'vitest'
import type { Change } from '@/api/shapes'
import { ChangeList } from '@/panels/plan/change-list'
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
    { canal: 'DB', what: 'final size', from: '40/.03', to: '45/.03' },
    { canal: null, what: 'laid out', from: '10/.02', to: 'none' },
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

test('what differs stands under the canal it concerns', () => {
  const of = (canal: string | null, what: string) => ({ canal, what, from: '18.0', to: '17.5' })
  render(<DifferenceView changes={[of('MB', 'ends at'), of('MB', 'needle never past'), of(null, 'kit')]} />)
  const lines = screen
    .getAllByRole('region')
    .map((each) => [each.getAttribute('aria-label'), within(each).getAllByRole('listitem').length])
  expect(lines).toEqual([
    ['MB', 2],
    ['Tooth', 1],
  ])
})

const change = (fields: Partial<Change>): Change => ({
  what: 'given',
  before: null,
  after: '24',
  subject: '',
  label: 'curvature',
  unit: '°',
  bears_on: 'shape',
  path: '/canals/P/curvature_deg',
  ...fields,
})

test('a fact of the input is told by its name, with its unit', () => {
  render(<ChangeList changes={[change({})]} came={[]} went={[]} />)
  expect(screen.getByRole('listitem').textContent).toBe('curvature was none → now 24°')
})

test('how far the work had come is folded away, a length never', () => {
  const used = change({ label: 'times used', after: '3', unit: '', bears_on: 'progress', path: '/kit/uses' })
  const read = change({
    label: 'read',
    after: '19',
    unit: 'mm',
    bears_on: 'depth',
    path: '/canals/P/readings/1/read_mm',
  })
  render(<ChangeList changes={[read, used]} came={[]} went={[]} />)
  expect(screen.getByText('How far the work had come: 1 thing')).toBeTruthy()
  expect(screen.getByText('3').closest('details')).not.toBeNull()
  expect(screen.getByText('19 mm').closest('details')).toBeNull()
})
