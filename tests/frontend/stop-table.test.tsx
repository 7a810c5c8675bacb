import { render, screen, within } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { grouped, StopTable } from '@/parts/stop-table/stop-table'
import { instrument, plan } from './sample-plan'

test('instruments stand in order of use, equal stops of one phase written once', () => {
  const rows = plan(3).stop_table
  const again = { ...rows[1], instrument: instrument(20, 2, 'hand', 'yellow') } as (typeof rows)[number]
  const groups = grouped([...rows.slice(0, 2), again, ...rows.slice(2)])
  expect(groups.map((g) => g.rows.map((r) => r.instrument.name))).toEqual([
    ['10/.02'],
    ['15/.02', '20/.02'],
    ['25/.09'],
    ['35/.03'],
    ['40/.03'],
  ])
})

test('every stop is there with its canal, and what is to resistance says so in a word', () => {
  const { stop_table, canals } = plan(3)
  render(<StopTable rows={stop_table} canals={canals} />)
  const row = screen.getByRole('rowheader', { name: /25 ?\/\.09/ }).closest('tr') as HTMLElement
  expect(
    within(row)
      .getAllByRole('cell')
      .map((c) => c.textContent),
  ).toEqual(['9.5', '9.5', '9.5'])
  expect(screen.getByRole('rowheader', { name: 'Flare to resistance' })).toBeTruthy()
  expect(screen.getByRole('rowheader', { name: 'Explore' })).toBeTruthy()
})

test('the needle: a ceiling that is never passed, and how deep after which instrument', () => {
  const { stop_table, canals } = plan(3)
  render(<StopTable rows={stop_table} canals={canals} />)
  const cells = (name: RegExp) =>
    [...(screen.getByRole('rowheader', { name }).closest('tr')?.querySelectorAll('td') ?? [])].map((c) => c.textContent)
  expect(cells(/never past/)).toEqual(['16.5', '12.5', '15.0'])
  expect(cells(/after 25\/\.03/)).toEqual(['12.5', '8.5', '11.0'])
})

test('a colour is never the only sign: the size is written beside the swatch', () => {
  const { stop_table, canals } = plan(2)
  const { container } = render(<StopTable rows={stop_table} canals={canals} />)
  for (const swatch of container.querySelectorAll('.swatch')) {
    expect(swatch.parentElement?.textContent).toMatch(/^\d\d\/\.\d\d/)
  }
})
