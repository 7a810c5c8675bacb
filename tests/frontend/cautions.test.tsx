import { render, screen } from '@testing-library/preact'
import { describe, expect, test } from 'vitest'
import type { Caution } from '@/api/shapes'
import { CautionCount, Cautions } from '@/parts/cautions'
import { DifficultyCard } from '@/parts/difficulty'
import { plan } from './sample-plan'

const invented: Caution = {
  code: 'invented',
  severity: 'stop',
  canal: 'MB',
  says: 'Invented.',
  do: 'Do something.',
  row: 'set_back',
  value: 2.5,
  limit: 2,
  unit: 'mm',
  step: null,
  know: 'from memory',
  may_override: true,
  overridden: null,
}
const with_ = (...over: Partial<Caution>[]) => ({ ...plan(1), cautions: over.map((o) => ({ ...invented, ...o })) })

describe('a caution', () => {
  test('says severity, value against limit, what to do, and the source of its figure', () => {
    const { container } = render(<Cautions plan={with_({})} />)
    const card = container.querySelector('.caution-card')
    expect(card?.querySelector('.caution-head')?.textContent).toBe(' must be put right · MB')
    expect(card?.querySelector('.caution-head svg')?.getAttribute('data-sign')).toBe('stop')
    expect(card?.querySelector('.measured')?.textContent).toBe('2.5 mm limit 2 mm')
    expect(screen.getByText('Do something.')).toBeTruthy()
    expect(screen.getByText('Rests on: Invented')).toBeTruthy()
    expect(screen.getByText(/Reference value, check/)).toBeTruthy()
  })

  test('that was let pass shows the supervisor’s reason, comes after the others and no longer counts as a stop', () => {
    const { cautions } = with_({ overridden: 'Seen at the chair.' }, { says: 'Still closed.' })
    const { container } = render(<Cautions plan={{ ...plan(1), cautions }} />)
    expect([...container.querySelectorAll('.caution-card')].map((card) => card.textContent)).toEqual([
      expect.stringContaining('Still closed.'),
      expect.stringContaining('Let pass by a supervisor: Seen at the chair.'),
    ])
    render(<CautionCount cautions={cautions} />)
    expect(screen.getByText(/1 to put right/)).toBeTruthy()
    expect(screen.getByText(/1 let pass/)).toBeTruthy()
  })

  test('that is a note takes one line with its like until they are opened', () => {
    const { container } = render(<Cautions plan={with_({}, { severity: 'note' }, { severity: 'note' })} />)
    const folded = container.querySelector('details')
    expect(folded?.querySelector('summary')?.textContent).toBe(' 2 notes')
    expect(folded?.open).toBe(false)
    expect(container.querySelectorAll('details .caution-card')).toHaveLength(2)
    expect(container.querySelectorAll('.caution-card')).toHaveLength(3)
  })
})

test('difficulty says its level by sign and word, what makes it so, and the counting rule', () => {
  const factor = { code: 'x', level: 'high' as const, says: 'Curved.', from_plan: true, source: 's', know: 'read' }
  const difficulty = {
    level: 'high' as const,
    factors: [factor],
    rule: 'One is high.',
    source: 'Invented',
    know: 'read',
  }
  const { container } = render(<DifficultyCard difficulty={difficulty} />)
  expect(container.querySelector('h2')?.textContent).toBe(' difficulty high')
  expect(container.querySelector('h2 svg')?.getAttribute('data-sign')).toBe('stop')
  expect(container.querySelector('li')?.textContent).toBe(' high Curved.worked out from the plan')
  expect(screen.getByText('One is high.')).toBeTruthy()
})
