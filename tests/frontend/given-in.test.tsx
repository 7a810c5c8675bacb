import { fireEvent, render, screen } from '@testing-library/preact'
import { expect, test } from 'vitest'
import type { CaseShown, Change, VersionShown } from '@/api/shapes'
import { Foot } from '@/screens/case/plan/foot'
import type { Preview } from '@/store/cache/plans'

const change = (label: string, more: Partial<Change> = {}): Change => ({
  ...{ label, what: 'given', before: null, after: '24', subject: '', unit: '°', bears_on: 'shape', path: `/${label}` },
  ...more,
})

function foot(inputChanges: Preview['inputChanges'], state = 'approved') {
  const of = { id: 'c1', status: { state, stale: false, number: 3 } } as unknown as CaseShown
  const last = { number: 3 } as VersionShown
  const preview: Preview = { state: 'computed', inputChanges }
  const nothing = async () => undefined
  const props = { of, last, asked: undefined, chosen: true, id: 'x', changes: [], preview }
  render(<Foot {...props} onAsked={nothing} onReason={() => undefined} dock={() => null} />)
}

const strip = () => screen.queryByRole('button', { expanded: false })

test('what went in is told where nothing that came out has moved', () => {
  foot({ from_number: 3, tooth: [], canals: [{ canal: 'MB1', changes: [change('curvature')] }] })
  const button = strip()
  if (!button) throw new Error('no strip')
  expect(button.textContent).toContain('1 change')
  fireEvent.click(button)
  const of = screen.getByRole('region', { name: 'MB1' })
  expect(of.textContent).toContain('curvature')
  expect(of.textContent).toContain('24°')
  // It is another plan, so it is asked for anew.
  expect(screen.getByText(/approval/, { selector: 'p' })).toBeTruthy()
})

test.each([
  ['how far the work has come', change('depth felt', { bears_on: 'progress' })],
  ['what is told by the same name already', change('kit', { what: 'kit' })],
])('%s is no change of its own', (_, choices) => {
  foot({ from_number: 3, tooth: [choices], canals: [] })
  expect(strip()).toBeNull()
})

test('an answer about another version is not shown', () => {
  foot({ from_number: 2, tooth: [change('curvature')], canals: [] })
  expect(strip()).toBeNull()
})
