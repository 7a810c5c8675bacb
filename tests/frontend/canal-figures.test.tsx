import { cleanup, render, screen } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { CanalFigures } from '@/parts/canal-figures/canal-figures'
import { words } from '@/words/en'
import { canal } from './sample-plan'

const planned = canal('ML', 20, {
  irrigants: [{ irrigant: 'sodium_hypochlorite', volume_ml: 26 }],
  strain: [
    { instrument: '25/.03', diameter_mm: 0.4, strain_pct: 2.1, strain_class: 'low', radius_mm: 6, taken: false },
    { instrument: '35/.03', diameter_mm: 0.5, strain_pct: 5.4, strain_class: 'high', radius_mm: 6, taken: false },
  ],
  wall: {
    from_end_mm: 10,
    before_mm: 0.79,
    canal_mm: 0.4,
    prepared_mm: 0.7,
    centred_mm: 0.64,
    worst_mm: 0.49,
    measured: false,
    source: 'Invented',
    know: 'programme rule',
  },
  obturation: {
    master_cone: '35/.02',
    rests: [
      { kind: 'cone', name: '35/.02', rests_mm: 20, short_mm: 0, earliest_short_mm: 0.5, fits: true, says: 'Fits.' },
      {
        kind: 'plugger',
        name: '60/.04',
        rests_mm: 15.5,
        short_mm: 4.5,
        earliest_short_mm: 5,
        fits: false,
        says: 'Binds.',
      },
    ],
    volumes: { before_mm3: null, prepared_mm3: 7.1, cone_mm3: 4.2, to_fill_mm3: 2.9 },
  },
})

const lines = (container: Element) =>
  [...container.querySelectorAll('.figure-line')].map((line) => line.textContent?.replace(/\s+/g, ' ').trim())

test('irrigant, wall, strain by class in words, cone, rests and volumes; what is not known is left out', () => {
  const { container } = render(<CanalFigures canal={planned} />)
  expect(lines(container)).toEqual([
    'sodium hypochlorite26 mL',
    'before0.79 mm',
    'left if the preparation stays centred0.64 mm',
    'left if it drifts to this side0.49 mm',
    '25/.03 low2.1 %',
    '35/.03 high5.4 %',
    'Cone 35/.02rests at 20.0',
    'Prepared canal7.1 mm³',
    'The cone’s part of it4.2 mm³',
    'Left to fill2.9 mm³',
    'Plugger 60/.04rests at 15.5',
  ])
  expect(screen.getByText('Thinnest wall, 10.0 mm from the end')).toBeTruthy()
  expect(screen.getByText(/Programme rule/)).toBeTruthy()
  expect(screen.getByText('Master cone: 35/.02')).toBeTruthy()
  expect(screen.getByText('The others of the kit').closest('details')?.textContent).toContain('Plugger 60/.04')
})

test('a curve that is not charted whole says what is counted with', () => {
  render(<CanalFigures canal={planned} />)
  expect(screen.queryByText(/Not all of this curve/)).toBeNull()
  cleanup()
  render(
    <CanalFigures
      canal={{ ...planned, strain: planned.strain.map((strain) => ({ ...strain, radius_mm: 5, taken: true })) }}
    />,
  )
  expect(screen.getByText(/Not all of this curve is charted: a radius of 5.0 mm is counted with/)).toBeTruthy()
})

test('nothing is said where nothing follows', () => {
  const { container } = render(<CanalFigures canal={canal('MB', 18)} />)
  expect(container.textContent).toBe('')
})

test.each([
  ['set_back.none', 'Set back, none'],
  ['foramina/16/MB1 MB2/narrow_mm', 'Foramina, 16, MB1 MB2, narrow'],
])('the figure %s reads %s', (key, says) => {
  expect(words.rationale.figure(key)).toBe(says)
})
