import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { CanalShown, CaseShown } from '@/api/shapes'
import { BOUNDS, FACTS } from '@/parts/bounds'
import { CanalFacts } from '@/screens/case/canal-facts'
import { chartedNumbers, toNumbers, wrongNumber } from '@/screens/case/canal-numbers'
import { signedIn } from './people'
import { problem, serve } from './server'

const canal = {
  id: 'c1',
  name: 'MB',
  finding: 'found',
  resorption: 'none',
  reference_point: 'MB cusp',
  curvature_deg: 32,
  curve_start_mm: null,
  orifice_mm: null,
  apex_mm: null,
  first_binder_size: 20,
  curve_radius_mm: 6,
  curve_from_end_mm: 4,
  wall: { thickness_mm: 0.79, from_end_mm: 10 },
} as CanalShown
const of = { id: 'k1', canals: [canal] } as unknown as CaseShown

describe('the numbers of a canal', () => {
  const typed = chartedNumbers(canal)

  test('come as charted and are sent as they came', () => {
    expect(typed).toMatchObject({
      curvature_deg: '32',
      curve_radius_mm: '6.0',
      'wall.thickness_mm': '0.79',
      apex_mm: '',
    })
    expect(toNumbers(typed)).toMatchObject({
      curvature_deg: 32,
      curve_start_mm: null,
      orifice_mm: null,
      apex_mm: null,
      first_binder_size: 20,
      curve_radius_mm: 6,
      curve_from_end_mm: 4,
      wall: { thickness_mm: 0.79, from_end_mm: 10 },
    })
  })

  test('an emptied wall is taken away', () => {
    expect(toNumbers({ ...typed, 'wall.thickness_mm': '', 'wall.from_end_mm': '' }).wall).toBeNull()
  })

  test.each([
    ['curve_radius_mm', '0', BOUNDS.curve_radius.sentence],
    ['curve_radius_mm', '101', BOUNDS.curve_radius.sentence],
    ['curve_from_end_mm', '38', BOUNDS.curve_from_end.sentence],
    ['curvature_deg', '200', BOUNDS.curvature.sentence],
    ['first_binder_size', '20.5', 'Type a whole number.'],
    ['curve_radius_mm', 'six', 'Type a number, for example 19.5 or 19,5.'],
    ['wall.thickness_mm', '', 'Fill this in.'],
    ['apex_mm', '', undefined],
    ['first_binder_size', '200', BOUNDS.hand_size.sentence],
    ['wall.thickness_mm', '5.1', BOUNDS.wall.sentence],
    ['wall.thickness_mm', '0,8', undefined],
  ] as const)('%s as %j: %s', (name, value, says) => {
    expect(wrongNumber(name, { ...typed, [name]: value })).toBe(says)
  })
})

describe('the form', () => {
  beforeEach(() => signedIn('Priya'))

  test('sends what was measured; a refusal stands at its field', async () => {
    const sent = serve(({ method }) =>
      method === 'PATCH'
        ? problem(400, 'invalid', [
            { pointer: '#/curve_radius_mm', detail: 'Too small.' },
            { pointer: '#/wall/from_end_mm', detail: 'Too deep.' },
          ])
        : 'nothing',
    )
    render(<CanalFacts canal={canal} of={of} />)
    fireEvent.input(screen.getByRole('textbox', { name: /Radius of the curve/, hidden: true }), {
      target: { value: '7,5' },
    })
    fireEvent.click(screen.getByRole('button', { name: 'Save', hidden: true }))
    expect(await screen.findByText('Too small.')).toBeTruthy()
    const level = screen.getByRole('textbox', { name: /Thinnest wall, from the end/, hidden: true })
    expect(level.closest('.field')?.textContent).toContain('Too deep.')
    expect(screen.getAllByText('Too deep.')).toHaveLength(1)
    expect(sent[0]?.body).toMatchObject({ curve_radius_mm: 7.5, wall: { thickness_mm: 0.79, from_end_mm: 10 } })
  })

  test('what was opened stays open while a number is deleted and typed anew', () => {
    const bare = { ...canal, curve_radius_mm: null, curve_from_end_mm: null, wall: null } as CanalShown
    render(<CanalFacts canal={bare} of={{ ...of, canals: [bare] } as CaseShown} />)
    const radius = screen.getByRole('textbox', { name: /Radius of the curve/, hidden: true })
    const more = radius.closest('details')
    expect(more?.open).toBe(false)
    fireEvent.input(radius, { target: { value: '7' } })
    expect(more?.open).toBe(true)
    fireEvent.input(radius, { target: { value: '' } })
    expect(more?.open).toBe(true)
  })

  test('every number that the server declares has its field, in its words', () => {
    render(<CanalFacts canal={canal} of={of} />)
    for (const { label } of Object.values(FACTS)) {
      const name = new RegExp(`^${label}( [(]|$)`, 'i')
      expect(screen.getAllByRole('textbox', { name, hidden: true })).toHaveLength(1)
    }
  })

  test('nothing is sent while a number is out of bounds', async () => {
    const sent = serve(() => 'nothing')
    render(<CanalFacts canal={canal} of={of} />)
    fireEvent.input(screen.getByRole('textbox', { name: /Thinnest wall, thickness/, hidden: true }), {
      target: { value: '50' },
    })
    fireEvent.click(screen.getByRole('button', { name: 'Save', hidden: true }))
    await waitFor(() => expect(screen.getByText(BOUNDS.wall.sentence)).toBeTruthy())
    expect(sent).toHaveLength(0)
  })
})
