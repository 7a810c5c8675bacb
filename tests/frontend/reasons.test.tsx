import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { describe, expect, test } from 'vitest'
import { pathsOf, reasonOf, stopPath } from '@/parts/rationale/paths'
import { WithReasons } from '@/parts/rationale/why'
import { StopTable } from '@/parts/stop-table/stop-table'
import { words } from '@/words/en'
import lines from '../shared/calculations.json'
import { rationale } from './sample-expected'
import { canal, plan } from './sample-plan'

const TRUE = {
  formula: '{working length} - {short by}',
  inputs: [
    { name: 'working length', value: 18.5, unit: 'mm' },
    { name: 'short by', value: 2, unit: 'mm' },
  ],
  exact: 16.5,
  rounding: 'half_mm_down' as const,
  result: 16.5,
  unit: 'mm',
}

test('a reason is looked for at the number itself, then for all of its list, then at what it is part of', () => {
  expect(pathsOf('needle.now.2.at_most_mm')).toEqual([
    'needle.now.2.at_most_mm',
    'needle.now.at_most_mm',
    'needle.now.2',
    'needle.now',
    'needle',
  ])
})

test.each([
  [18.5, 'stops.full'],
  [14.5, 'stops.end'],
  [9.5, 'stops.coronal'],
])('the reason of a stop at %s is that of %s', (stop_mm, path) => {
  expect(stopPath({ end_mm: 14.5, length: { stop_mm: 18.5 } }, stop_mm)).toBe(path)
})

describe('of several lines of arithmetic', () => {
  const calculation = (result: number) => ({ ...TRUE, exact: result, result })
  const back = rationale('stops.step_back', { calculations: [18.5, 17.5].map(calculation) })
  const strain = rationale('strain', { calculations: [3.9, 3.9, 4].map(calculation) })

  test('that one is shown which gives the number', () => {
    expect(reasonOf([back], 'stops.step_back', '17.5')?.line?.result).toBe(17.5)
    expect(reasonOf([back], 'stops.step_back', '12.0')?.line).toBeUndefined()
  })

  test('or which stands at the number’s place in its list', () => {
    expect(reasonOf([strain], 'strain.2.strain_pct', '4 %')?.line).toBe(strain.calculations[2])
    expect(reasonOf([strain], 'strain.1.strain_pct', '3.9 %')?.line).toBe(strain.calculations[1])
  })
})

test.each(lines.map(({ line, ...of }) => [line, of] as const))('%s', (line, of) => {
  expect(words.rationale.line(of)).toBe(line)
})

describe('a number that can be touched', () => {
  const version = {
    ...plan(1),
    canals: [canal('MB', 18.5, { rationales: [rationale('needle.ceiling_mm', { calculations: [TRUE] })] })],
  }
  const open = () => {
    render(
      <WithReasons plan={version}>
        <StopTable rows={version.stop_table} canals={version.canals} />
      </WithReasons>,
    )
    const button = screen.getByRole('button', { name: 'Why 16.5: MB, needle, never past, reference value, check' })
    button.focus()
    fireEvent.click(button)
    return button
  }

  test('says rule and arithmetic, and folded what it rests on with how that is known', () => {
    open()
    const sheet = screen.getByRole('dialog', { name: 'MB: needle, never past' })
    expect(sheet.textContent).toContain('Invented rule of needle.ceiling_mm.')
    expect(sheet.textContent).toContain('18.5 − 2.0 = 16.5')
    expect(sheet.textContent).toContain('working length18.5 mm')
    const source = screen.getByText('Where it comes from').closest('details')
    expect(source?.open).toBe(false)
    expect(source?.textContent).toContain('working length')
    expect(sheet.textContent).toContain('Set back1 mmInventedReference value, check')
  })

  test('is closed by its button, and the number has the focus again', async () => {
    const button = open()
    fireEvent.click(screen.getByRole('button', { name: 'Close' }))
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull())
    expect(document.activeElement).toBe(button)
  })

  test('is plain where the plan gives no reason', () => {
    open()
    expect(screen.getAllByRole('button').filter((b) => b.getAttribute('aria-haspopup') === 'dialog')).toHaveLength(1)
  })
})
