import { describe, expect, test } from 'vitest'
import type { MarkingShown } from '@/api/shapes'
import {
  asScale,
  EMPTY,
  lineOf,
  movedTo,
  placed,
  pointsOf,
  SCALE,
  withKnown,
  withLine,
  without,
  withRole,
} from '@/panels/marks/draft'
import { draftOf, marksOf, takenBefore } from '@/panels/marks/draft-of'
import { saidOf, spotAt } from '@/panels/marks/measured'
import { unitOf } from '@/panels/marks/unit'

const at = (x: number, y: number) => ({ x, y })

/** Marks straight down, 100 px apart. */
function straight(count: number) {
  let draft = EMPTY
  for (let i = 0; i < count; i++) draft = placed(draft, 'P', i === 0 ? undefined : i - 1, at(50, 100 * i))
  return draft
}

describe('marks of a line', () => {
  test('come one after the other, the second is the orifice', () => {
    const line = lineOf(straight(3), 'P')
    expect(line.points).toEqual([at(50, 0), at(50, 100), at(50, 200)])
    expect(line.orifice).toBe(1)
  })

  test('one between two others leaves the roles where they are', () => {
    const draft = withRole(straight(5), 'P', 3, 'leaves')
    const line = lineOf(placed(draft, 'P', 1, at(60, 150)), 'P')
    expect(line.points[2]).toEqual(at(60, 150))
    expect([line.orifice, line.leaves]).toEqual([1, 4])
  })

  test('one that is taken out takes its role with it', () => {
    const draft = withRole(straight(5), 'P', 3, 'leaves')
    expect(lineOf(without(draft, 'P', 1), 'P')).toMatchObject({ orifice: null, leaves: 2 })
    expect(lineOf(without(draft, 'P', 3), 'P')).toMatchObject({ orifice: 1, leaves: null })
    expect(lineOf(without(draft, 'P', 4), 'P')).toMatchObject({ orifice: 1, leaves: 3 })
  })

  test('what comes later on the canal stays later', () => {
    const bends = withRole(straight(6), 'P', 2, 'leaves')
    expect(lineOf(withRole(bends, 'P', 4, 'straightAgain'), 'P')).toMatchObject({ leaves: 2, straightAgain: 4 })
    expect(lineOf(withRole(bends, 'P', 3, 'orifice'), 'P')).toMatchObject({ orifice: 3, leaves: null })
    expect(lineOf(withRole(bends, 'P', 2, 'leaves'), 'P').leaves).toBeNull()
  })

  test('a mark is moved, also of the scale', () => {
    const draft = placed(placed(EMPTY, SCALE, undefined, at(0, 0)), SCALE, 0, at(0, 300))
    expect(pointsOf(movedTo(draft, SCALE, 1, at(5, 310)), SCALE)[1]).toEqual(at(5, 310))
    expect(pointsOf(movedTo(straight(2), 'P', 0, at(1, 1)), 'P')[0]).toEqual(at(1, 1))
  })
})

describe('what marks come to', () => {
  const scaled = withKnown(straight(5), { points: [at(0, 0), at(0, 300)], lengthMm: '18' })

  test('a known object gives the scale: 18 mm over 300 px, so 400 px are 24 mm', () => {
    const unit = unitOf(scaled, undefined, undefined)
    expect(unit.columnMm).toBeCloseTo(0.06, 9)
    expect(saidOf(lineOf(scaled, 'P'), unit).lengthMm).toBeCloseTo(24, 9)
    expect(spotAt(lineOf(scaled, 'P'), unit, 12)?.y).toBeCloseTo(200, 6)
  })

  test('pixels twice as tall as wide count twice downwards', () => {
    const file = { row_per_column: 2, column_mm: null } as Parameters<typeof unitOf>[1]
    expect(unitOf(scaled, file, undefined).columnMm).toBeCloseTo(0.03, 9)
    expect(saidOf(lineOf(scaled, 'P'), unitOf(scaled, file, undefined)).lengthMm).toBeCloseTo(24, 9)
  })

  test('without a scale there is no length', () => {
    expect(saidOf(lineOf(scaled, 'P'), unitOf(straight(5), undefined, undefined)).lengthMm).toBeUndefined()
  })

  test('a tip before the end is short of it, one behind it past it', () => {
    const unit = unitOf(scaled, undefined, undefined)
    const tip = (y: number) => saidOf({ ...lineOf(scaled, 'P'), tip: at(50, y) }, unit).tipShortMm
    expect(tip(375)).toBeCloseTo(1.5, 9)
    expect(tip(410)).toBeCloseTo(-0.6, 9)
  })

  test('each is sent with how large the image was shown, and goes on from there', () => {
    const draft = movedTo(straight(3), 'P', 2, { ...at(50, 210), zoom: 0.25 })
    const marks = marksOf(draft, [{ name: 'P', reference_point: '' }])
    expect(marks.lines[0]?.points.map(({ screen_px_per_px }) => screen_px_per_px)).toEqual([null, null, 0.25])
    expect(lineOf(draftOf({ marks } as unknown as MarkingShown), 'P').points).toEqual(lineOf(draft, 'P').points)
  })

  test('where it bends with nothing after it is not marked yet', () => {
    const bends = withRole(straight(4), 'P', 3, 'leaves')
    expect(marksOf(bends, [{ name: 'P', reference_point: '' }]).lines[0]?.leaves).toBeNull()
    const more = placed(bends, 'P', 3, at(60, 400))
    expect(marksOf(more, [{ name: 'P', reference_point: '' }]).lines[0]?.leaves).toBe(3)
  })

  test('they are sent as the server takes them; a single mark is no line', () => {
    const sent = marksOf(placed(scaled, 'MB1', undefined, at(9, 9)), [
      { name: 'P', reference_point: 'palatal cusp' },
      { name: 'MB1', reference_point: '' },
    ])
    expect(sent.lines.map(({ canal }) => canal)).toEqual(['P'])
    expect(sent.lines[0]?.points[1]).toEqual({ x_px: 50, y_px: 100, screen_px_per_px: null })
    expect(sent.known).toMatchObject({ what: 'instrument', length_mm: 18 })
  })
})

describe('an instrument that stands in the canal', () => {
  const tipped = (y: number, setMm = '18') => withLine(straight(5), 'P', { tip: at(52, y), setMm })

  test('is the scale: along the marks before its tip, to the tip', () => {
    const { known } = asScale(tipped(330), 'P')
    expect(known).toEqual({
      what: 'instrument',
      lengthMm: '18',
      points: [at(50, 0), at(50, 100), at(50, 200), at(50, 300), at(52, 330)],
    })
  })

  test('past the end it runs through every mark, on one it ends there once', () => {
    expect(asScale(tipped(430), 'P').known.points).toHaveLength(6)
    expect(asScale(tipped(300), 'P').known.points).toEqual([at(50, 0), at(50, 100), at(50, 200), at(52, 300)])
  })

  test('without a tip nothing changes', () => {
    expect(asScale(straight(5), 'P')).toEqual(straight(5))
  })
})

describe('going on from marks of before', () => {
  const shown = (points: [number, number][]) =>
    ({
      readings: ['P'],
      marks: {
        lines: [
          {
            canal: 'P',
            points: points.map(([x_px, y_px]) => ({ x_px, y_px })),
            ...{ orifice: 1, leaves: null, straight_again: null, tip: null, set_mm: null },
          },
        ],
        known: null,
      },
    }) as unknown as MarkingShown

  test('the same marks are not taken twice, others are', () => {
    const kept = shown([
      [50, 0],
      [50, 100],
    ])
    expect(takenBefore(draftOf(kept), 'P', [kept])).toBe(true)
    expect(takenBefore(movedTo(draftOf(kept), 'P', 1, at(50, 101)), 'P', [kept])).toBe(false)
    expect(takenBefore(withKnown(draftOf(kept), { lengthMm: '18' }), 'P', [kept])).toBe(false)
    expect(takenBefore(draftOf(kept), 'P', [{ ...kept, readings: [] }])).toBe(false)
  })
})
