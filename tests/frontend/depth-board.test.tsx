import { fireEvent, render, screen } from '@testing-library/preact'
import { describe, expect, test } from 'vitest'
import { DepthBoard } from '@/parts/depth-board/depth-board'
import { layOut, lines, orifice, profile, standing, yOf } from '@/parts/depth-board/geometry'
import { type Mark, zonesOf } from '@/parts/depth-board/marks'
import { sideOf } from '@/parts/depth-board/meeting'
import { coronalStops } from '@/parts/depth-board/shape'
import { expectation } from './sample-expected'
import { canal, drawn, plan } from './sample-plan'

const widths = (points: string) => points.split(' ').map((pair) => Number(pair.split(',')[0]))

describe('scales', () => {
  test.each([
    [320, 6],
    [360, 4],
    [412, 1],
  ])('%i px wide with %i canals: nothing leaves the room or its column', (width, n) => {
    const { canals } = plan(n)
    const board = layOut(width, 480, canals)
    for (const [i, column] of canals.entries()) {
      const x = widths(profile({ board, index: i, canal: column, side: 0 }, column.outline))
      const left = board.gutter + board.column * i
      expect(Math.min(...x)).toBeGreaterThanOrEqual(left)
      expect(Math.max(...x)).toBeLessThanOrEqual(left + board.column)
      expect(yOf(board, column.end_mm ?? 0)).toBeLessThanOrEqual(480)
    }
  })

  test.each([1, 4, 6])('360 px wide with %i canals: wide diameters and what goes in stay in their column', (n) => {
    const steps = [{ node: 'a', instrument: 'steep', depth_mm: 9 }]
    const canals = plan(n).canals.map((c) => ({ ...c, expectation: expectation(c.end_mm ?? 18, steps) }))
    const steep = drawn(35, 11)
    const board = layOut(360, 300, canals, [], [steep])
    for (const [index, column] of canals.entries()) {
      const place = { board, index, canal: column, side: 0 } as const
      const wide = column.expectation.initial_shape.points.map((p) => ({ ...p, diameter_mm: p.wide_mm }))
      for (const outline of [wide, standing(steep, 9)]) {
        const x = widths(profile(place, outline))
        const left = board.gutter + board.column * index
        expect(Math.min(...x)).toBeGreaterThanOrEqual(left)
        expect(Math.max(...x)).toBeLessThanOrEqual(left + board.column)
      }
    }
  })

  test('the board takes the height it is given', () => {
    const { canals } = plan(4)
    const low = layOut(360, 400, canals)
    const high = layOut(360, 600, canals)
    expect(high.px_per_mm * high.deepest_mm - low.px_per_mm * low.deepest_mm).toBeCloseTo(200, 6)
  })

  test('width is drawn at true taper times the factor that is printed', () => {
    const alone = canal('DB', 17)
    const board = layOut(360, 480, [alone])
    const place = { board, index: 0, canal: alone, side: 0 } as const
    const x = widths(profile(place, alone.outline))
    const scale = board.widened * board.px_per_mm
    // Right side from the top down, then the left one from the bottom up: the first and last point are the orifice's.
    expect((x[0] ?? 0) - (x.at(-1) ?? 0)).toBeCloseTo(1.3 * scale, 0)
    expect(Math.min(...x)).toBeCloseTo(x.at(-1) ?? 0, 6)
    expect((orifice(place, alone.outline)?.half ?? 0) * 2).toBeCloseTo(1.3 * scale, 6)
    render(<DepthBoard canals={[alone]} />)
    expect(screen.getByText(/width ×\d/)).toBeTruthy()
  })

  test('an instrument stands with its tip at its depth, cut off at the reference point', () => {
    // 25/.04 by hand: 0.25 mm at the tip, 0.25 + 0.04 × 10 = 0.65 mm where it passes the reference point.
    const silhouette = [
      { from_tip_mm: 0, diameter_mm: 0.25 },
      { from_tip_mm: 16, diameter_mm: 0.89 },
    ]
    const widths_mm = standing(silhouette, 10).map((p) => [p.from_reference_mm, Number(p.diameter_mm.toFixed(6))])
    expect(widths_mm).toEqual([
      [0, 0.65],
      [10, 0.25],
    ])
    expect(standing(silhouette, 18)[0]).toEqual({ from_reference_mm: 2, diameter_mm: 0.89 })
  })

  test('a label too wide for its column is broken at the blanks', () => {
    expect(lines('joins MB', 12, 40)).toEqual(['joins', 'MB'])
    expect(lines('joins MB', 12, 80)).toEqual(['joins MB'])
  })
})

describe('what it says', () => {
  test('coronal instruments have their own stop, the series does not count', () => {
    const { canals, stop_table } = plan(3)
    expect(coronalStops(canals, stop_table)).toEqual([
      { canal: 'MB', stop_mm: 9.5 },
      { canal: 'ML', stop_mm: 9.5 },
      { canal: 'DB', stop_mm: 9.5 },
    ])
  })

  test('a size above the final one, which ends short as well, is no coronal instrument', () => {
    const short = { canal: 'MB', stop_mm: 17.5, target: 'to_resistance' as const }
    const { canals, stop_table } = plan(1)
    const rows = [...stop_table, { stops: [{ ...short, why: 'stops.above_final' }] }]
    expect(coronalStops(canals, rows)).toEqual([{ canal: 'MB', stop_mm: 9.5 }])
    // A plan of before does not say what kind of stop it is: then it is one by where it lies.
    expect(coronalStops(canals, [{ stops: [{ ...short, why: '' }] }])).toEqual([{ canal: 'MB', stop_mm: 17.5 }])
  })

  test('the number of a coronal stop stands clear of the canal it lies in', () => {
    const { canals, stop_table } = plan(4)
    const { container } = render(<DepthBoard canals={canals} coronal={coronalStops(canals, stop_table)} />)
    const marks = [...container.querySelectorAll('.coronal')]
    expect(marks).toHaveLength(4)
    for (const mark of marks) {
      const number = mark.querySelector('text')
      expect(number?.getAttribute('x')).toBe(mark.querySelector('line')?.getAttribute('x2'))
      expect(number?.classList).toContain('halo')
    }
  })

  test('a canal that has no final size yet says so', () => {
    const { container } = render(<DepthBoard canals={[canal('MB', 18, { final_size: null })]} />)
    expect(container.querySelector('p.unseen')?.textContent).toBe('MB: ends 18.0 mm from MB cusp, no final size yet.')
  })

  test('a joining canal leans towards the one it joins', () => {
    const { canals } = plan(3)
    expect(canals.map((_, i) => sideOf(canals, i))).toEqual([0, -1, 0])
    expect(sideOf([...canals].reverse(), 1)).toBe(1)
  })

  test('there is a sentence for each canal', () => {
    const { canals, stop_table } = plan(2)
    const { container } = render(<DepthBoard canals={canals} coronal={coronalStops(canals, stop_table)} />)
    expect(container.querySelector('p.unseen')?.textContent).toBe(
      'MB: ends 18.5 mm from MB cusp, final size 40/.03, coronal instruments to 9.5 mm. ' +
        'ML: ends 14.5 mm from ML cusp, where it joins MB, final size 40/.03, coronal instruments to 9.5 mm.',
    )
  })

  test('an estimate is dashed and called one, with the range it lies in; no length is said', () => {
    const estimated = { least_mm: 18.2, most_mm: 20.9, rests_on: 'detector' }
    const length = { ...canal('MB', 18).length, estimated }
    const canals = [canal('MB', 18, { provisional: true, length }), canal('ML', 0, { end_mm: null, outline: [] })]
    const { container } = render(<DepthBoard canals={canals} />)
    expect(container.querySelector('[data-length="estimate"] [data-kind="estimate"]')).toBeTruthy()
    expect(screen.getByText('≈ 18.0')).toBeTruthy()
    expect(container.querySelectorAll('.end-between')).toHaveLength(1)
    expect(container.querySelector('.no-length')?.textContent).toBe('nolengthyet')
  })

  test('the outline of the version before is laid over only where it differs', () => {
    const { canals } = plan(3)
    const before = canals.map((c) => (c.canal === 'DB' ? canal('DB', 18.5) : c))
    const { container } = render(<DepthBoard canals={canals} before={before} />)
    expect(container.querySelectorAll('.shape-before')).toHaveLength(1)
    expect(container.querySelectorAll('.end-before')).toHaveLength(1)
    expect(screen.getByText('was 18.5')).toBeTruthy()
  })
})

describe('what answers a touch', () => {
  const mark = (y: number): Mark => ({ y, title: '', value: '', of: [] })

  test('each mark lies in one place, high enough to be hit, and none over another', () => {
    // Every pair and triple of heights on a coarse board, and all of them at once.
    const heights = Array.from({ length: 21 }, (_, i) => 10 + i * 20)
    const from = (least: number) => heights.filter((y) => y >= least)
    const sets = heights.flatMap((a) => from(a).flatMap((b) => [[a, b], ...from(b).map((c) => [a, b, c])]))
    for (const set of [heights, ...sets]) {
      const marks = set.map(mark)
      const zones = zonesOf(marks, 44)
      expect(zones.flatMap((zone) => zone.marks)).toEqual(marks)
      for (const [i, { top, height, marks: inside }] of zones.entries()) {
        expect(height).toBeGreaterThanOrEqual(44)
        for (const { y } of inside) expect(y >= top && y <= top + height).toBe(true)
        const next = zones[i + 1]
        if (next) expect(next.top).toBeGreaterThanOrEqual(top + height)
      }
    }
  })

  const felt: Parameters<typeof expectation>[1] = [
    { node: 'a', instrument: 'ten', depth_mm: 18.5, felt: 'as_expected' },
    { node: 'b', instrument: 'shaper', depth_mm: 12, low_mm: 11, high_mm: 13 },
  ]
  const caution = { canal: 'MB', severity: 'stop', says: 'It curves.', do: 'Ask first.', overridden: null } as const

  function board(over: object = {}) {
    const [mb] = plan(1).canals
    if (!mb) throw new Error('MB')
    const canals = [{ ...mb, expectation: expectation(18.5, felt) }]
    const done = new Map([['MB', 1]])
    return render(
      <DepthBoard
        canals={canals}
        coronal={[{ canal: 'MB', stop_mm: 6 }]}
        progress={{ done, now: undefined }}
        cautions={[caution, { ...caution, says: 'Let pass.', overridden: 'Seen.' }, { ...caution, canal: 'DB' }]}
        nameOf={(key) => `name of ${key}`}
        {...over}
      />,
    )
  }

  test('end, coronal stop, what was recorded and expected, and what stands in the way: each is named', () => {
    board()
    const said = screen.getAllByRole('button').map((button) => button.getAttribute('aria-label'))
    for (const sentence of [
      'MB, must be put right, It curves.',
      'coronal instruments, never past, 6.0',
      'expected depth of name of shaper, 11.0–13.0',
      'name of ten stopped at, 18.5',
      'ends at, 18.5',
    ])
      expect(said.join(' ')).toContain(sentence)
    expect(said.join(' ')).not.toContain('Let pass')
  })

  test('it lies where the mark is, in pixels, and opens what is said of it', () => {
    const { container } = board()
    const [first] = screen.getAllByRole('button')
    expect(first?.style.top).toBe('0px')
    for (const button of screen.getAllByRole('button')) expect(button.style.left).toMatch(/^[\d.]+px$/)
    if (first) fireEvent.click(first)
    expect(container.querySelector('.sheet')?.textContent).toContain('must be put right It curves.Ask first.')
  })
})
