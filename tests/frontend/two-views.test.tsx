import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { CaseShown, MarkingShown, TwoViewsRead } from '@/api/shapes'
import { bendsRight, endsApartMm, onBoth, rightOfMm } from '@/panels/marks/two-markings'
import { BendInSpace } from '@/screens/marks/bend-in-space'
import { WhichSide } from '@/screens/marks/which-side'
import { signedIn } from './people'
import { problem, type Sent, serve } from './server'

type Spot = [x_px: number, y_px: number]

/** Straight down to where it bends, and on to the end; 0.05 mm a pixel. */
function marking(id: string, lines: Record<string, Spot[]>, column_mm: number | null = 0.05): MarkingShown {
  return {
    id,
    marks: {
      lines: Object.entries(lines).map(([canal, points]) => ({
        canal,
        points: points.map(([x_px, y_px]) => ({ x_px, y_px })),
        ...{ orifice: 0, leaves: 3 },
      })),
    },
    measured: {
      scale: { column_mm, row_per_column: 1 },
      lines: Object.keys(lines).map((canal) => ({
        canal,
        bend: { schneider_deg: { value: 20, least: 18, most: 22 } },
      })),
    },
  } as unknown as MarkingShown
}

const down = (x: number, end: number): Spot[] => [
  [x, 0],
  [x, 80],
  [x, 160],
  [x, 200],
  [end, 260],
]

const LEFT = marking('left', { MB: down(100, 120), ML: down(160, 160) })
const RIGHT = marking('right', { MB: down(100, 80), ML: down(190, 190) })

describe('two markings', () => {
  test('to which side a canal bends, and how far one lies from another', () => {
    expect([bendsRight(LEFT, 'MB'), bendsRight(RIGHT, 'MB')]).toEqual([true, false])
    // By hand: 60 and 90 pixels of 0.05 mm to the left.
    expect(rightOfMm(LEFT, 'MB', 'ML')).toBeCloseTo(-3, 9)
    expect(rightOfMm(RIGHT, 'MB', 'ML')).toBeCloseTo(-4.5, 9)
    expect(rightOfMm(marking('bare', { MB: down(1, 1), ML: down(2, 2) }, null), 'MB', 'ML')).toBeUndefined()
    // By hand: ends 40 px and 30 px apart, so 50 px of 0.05 mm.
    const moved = marking('moved', { MB: [...down(100, 120).slice(0, -1), [160, 290]] })
    expect(endsApartMm(LEFT, moved, 'MB')).toBeCloseTo(2.5, 9)
    expect(endsApartMm(LEFT, moved, 'ML')).toBeUndefined()
    expect(onBoth(LEFT, marking('one', { ML: down(1, 1) }))).toEqual(['ML'])
  })
})

const CASE = { id: 'case', canals: [{ id: 'mb', name: 'MB' }] } as unknown as CaseShown
const KEPT = { number: 1, id: 'k', made_by: { name: 'Ada' }, at: '2026-03-05T14:20:00Z', outdated: true }

function served(read: TwoViewsRead | ReturnType<typeof problem>): Sent[] {
  return serve(({ method, path }) => {
    if (path === 'compute/two-views') return 'status' in read ? read : { body: read }
    if (path.endsWith('/images')) return { body: { marking: { interval_share: 0.95 }, images: [] } }
    if (method === 'PUT') return { status: 201, body: {} }
    if (path.endsWith('/bends-in-space'))
      return { body: { results: [{ ...KEPT, in_space: { value: 31, least: 28, most: 34 } }] } }
    return { body: {} }
  })
}

const shiftOf = (sent: Sent[]) =>
  (sent.at(-1) as { body: { views: { shift: Record<string, unknown> } } }).body.views.shift

beforeEach(() => signedIn(`ada ${Math.random()}`))

describe('which canal is which', () => {
  test('is asked of the server with what was marked, and told by name', async () => {
    const sent = served({ one_is: 'buccal', why: 'It moved the other way.', in_space_deg: null, in_space: null })
    render(<WhichSide left={LEFT} right={RIGHT} />)
    fireEvent.click(screen.getByRole('radio', { name: 'mesial' }))
    fireEvent.click(screen.getByRole('radio', { name: 'right' }))
    expect(await screen.findByText('MB lies buccal of ML.')).toBeDefined()
    const shift = shiftOf(sent)
    expect(shift.tube).toBe('mesial')
    expect(shift.first_mm).toBeCloseTo(-3, 9)
    expect(shift.second_mm).toBeCloseTo(-4.5, 9)
    // Where mesial is to the left the very same marks lie the other way.
    fireEvent.click(screen.getByRole('radio', { name: 'left' }))
    expect(screen.queryByText('MB lies buccal of ML.')).toBeNull()
    await screen.findByText('MB lies buccal of ML.')
    expect(shiftOf(sent).first_mm).toBeCloseTo(3, 9)
  })
})

describe('of three canals', () => {
  const three = (id: string) => marking(id, { MB: down(100, 120), ML: down(160, 160), D: down(300, 300) })

  test('another pair is asked for anew: no answer is told of canals it was not given for', async () => {
    const sent = served({ one_is: 'buccal', why: 'It moved the other way.', in_space_deg: null, in_space: null })
    render(<WhichSide left={three('left')} right={three('right')} />)
    fireEvent.click(screen.getByRole('radio', { name: 'mesial' }))
    fireEvent.click(screen.getByRole('radio', { name: 'right' }))
    await screen.findByText('MB lies buccal of ML.')
    fireEvent.change(screen.getByLabelText('against'), { target: { value: 'D' } })
    expect(screen.queryByText(/lies buccal/)).toBeNull()
    expect(await screen.findByText('MB lies buccal of D.')).toBeDefined()
    // By hand: 200 pixels of 0.05 mm to the left.
    expect(shiftOf(sent).first_mm).toBeCloseTo(-10, 9)
  })
})

describe('a bend in space', () => {
  const turn = (deg: string) =>
    fireEvent.input(screen.getByRole('textbox', { name: /tube turned by/ }), { target: { value: deg } })

  test('is asked with both angles as sure as they are, below 0 where it bends to the other side', async () => {
    const sent = served({ one_is: null, why: '', in_space_deg: 30.6, in_space: { value: 30.6, least: 27, most: 34.2 } })
    render(<BendInSpace of={CASE} left={LEFT} right={RIGHT} />)
    expect(await screen.findByText(/31° in space/)).toBeDefined()
    expect(screen.getByText(/marked anew since/)).toBeDefined()
    turn('40')
    const keep = await screen.findByRole('button', { name: 'Keep and chart for MB' })
    const asked = sent.find(({ path }) => path === 'compute/two-views')?.body
    const angle = { value: 20, least: 18, most: 22 }
    const within = { first_within: angle, second_within: angle }
    expect(asked).toEqual({
      views: { shift: null, bends: { first_deg: 20, second_deg: -20, apart_deg: 40, ...within } },
    })
    fireEvent.click(keep)
    const put = () => sent.find(({ method }) => method === 'PUT')
    await waitFor(() => expect(put()).toBeDefined())
    const kept = put()
    expect(kept?.path).toMatch(/^canals\/mb\/bends-in-space\/[0-9a-f-]{36}$/)
    expect(kept?.body).toEqual({ first_id: 'left', second_id: 'right', apart_deg: 40, other_side: true })
  })

  test('that cannot be had says why, and nothing can be kept', async () => {
    served(problem(422, 'views-do-not-fit', [{ pointer: '#/views/bends/apart_deg', detail: 'Too nearly the same.' }]))
    render(<BendInSpace of={CASE} left={LEFT} right={RIGHT} />)
    turn('5')
    expect(await screen.findByText('Too nearly the same.')).toBeDefined()
    expect(screen.queryByRole('button', { name: /^Keep and chart/ })).toBeNull()
  })

  test('needs the bend on both images', () => {
    render(<BendInSpace of={CASE} left={LEFT} right={marking('other', { ML: down(1, 1) })} />)
    expect(screen.getByText(/Mark where a canal bends on both images/)).toBeDefined()
  })
})
