import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { describe, expect, test } from 'vitest'
import { pathsOf, stopPath } from '@/parts/rationale/paths'
import { WithReasons } from '@/parts/rationale/reasons'
import { StopTable } from '@/parts/stop-table/stop-table'
import { rationale } from './sample-expected'
import { canal, plan } from './sample-plan'

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

describe('a number that can be touched', () => {
  const why = rationale('needle.ceiling_mm', { inputs: [{ name: 'working length', value: 18.5, unit: 'mm' }] })
  const version = { ...plan(1), canals: [canal('MB', 18.5, { rationales: [why] })] }
  const open = () => {
    render(
      <WithReasons plan={version}>
        <StopTable rows={version.stop_table} canals={version.canals} />
      </WithReasons>,
    )
    const button = screen.getByRole('button', { name: /MB, needle, never past, 16\.5, reference value, check: why/ })
    button.focus()
    fireEvent.click(button)
    return button
  }

  test('says rule, what went in, and what it rests on with how that is known', () => {
    open()
    const sheet = screen.getByRole('dialog', { name: 'MB: needle, never past' })
    expect(sheet.textContent).toContain('Invented rule of needle.ceiling_mm.')
    expect(sheet.textContent).toContain('working length18.5 mm')
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
