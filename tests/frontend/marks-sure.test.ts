import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { ImageMarks, MarkFigures, Scale } from '@/api/shapes'
import { type Draft, EMPTY, EMPTY_LINE, lineOf, withKnown } from '@/panels/marks/draft'
import { intervalsOf, saidOf } from '@/panels/marks/measured'
import { unitOf } from '@/panels/marks/unit'

type Three = [value: number, least: number, most: number]

interface Case {
  name: string
  marks: ImageMarks
  facts?: { at_detector: { row_mm: number; column_mm: number } }
  share: number | null
  length_mm?: Three
  schneider_deg?: Three
  tip_short_mm?: Three
  tip_deeper_mm?: Three
}

// Worked by hand; the server's measuring answers them too.
const { sure, figures } = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/marks.json'), 'utf8')) as {
  sure: Case[]
  figures: MarkFigures
}

const spot = ({ x_px, y_px, screen_px_per_px: zoom }: Pixel) => ({ x: x_px, y: y_px, zoom: zoom ?? undefined })
type Pixel = { x_px: number; y_px: number; screen_px_per_px?: number | null }

function draftOf({ lines, known }: ImageMarks): Draft {
  const [line] = lines
  const P = {
    ...EMPTY_LINE,
    points: line?.points.map(spot) ?? [],
    leaves: line?.leaves ?? null,
    tip: line?.tip ? spot(line.tip) : null,
    setMm: String(line?.set_mm ?? ''),
  }
  if (!known) return { ...EMPTY, lines: { P } }
  return {
    lines: { P },
    known: { what: known.what, lengthMm: String(known.length_mm), points: known.points.map(spot) },
  }
}

test.each(sure)('$name', ({ marks, facts, share, ...expected }) => {
  const draft = draftOf(marks)
  const file = facts && ({ row_per_column: facts.at_detector.row_mm / facts.at_detector.column_mm } as Scale)
  const unit = unitOf(draft, file, figures)
  if (share === null) expect(unit.share).toBeUndefined()
  else expect(unit.share).toBeCloseTo(share, 6)
  const said = saidOf(lineOf(draft, 'P'), unit)
  const within = intervalsOf(lineOf(draft, 'P'), unit)
  const pairs = [
    [expected.length_mm, said.lengthMm, within.lengthMm],
    [expected.schneider_deg, said.angleDeg, within.angleDeg],
    [expected.tip_short_mm, said.tipShortMm, within.tipShortMm],
    [expected.tip_deeper_mm, said.tipDeeperMm, within.tipDeeperMm],
  ] as const
  for (const [known, value, ends] of pairs) {
    if (!known) {
      expect([value, ends]).toEqual([undefined, undefined])
      continue
    }
    for (const [i, number] of [value, ...(ends ?? [])].entries()) expect(number).toBeCloseTo(known[i] ?? Number.NaN, 2)
    expect(ends).toHaveLength(2)
  }
})

test('what an older server told of has no zoom in it: marks count as they did', () => {
  const { screen_spread_px: _, ...old } = figures
  const points = [at(0, 0), at(0, 700)].map((spot) => ({ ...spot, zoom: 0.1 }))
  const unit = unitOf(object18(), undefined, old as MarkFigures)
  const within = intervalsOf({ ...EMPTY_LINE, points }, unit).lengthMm
  expect(within).toEqual(intervalsOf({ ...EMPTY_LINE, points: [at(0, 0), at(0, 700)] }, unit).lengthMm)
})

test('there are cases', () => expect(sure.length).toBeGreaterThan(3))

const at = (x: number, y: number) => ({ x, y })
const object18 = () => withKnown(EMPTY, { points: [at(9, 0), at(9, 600)], lengthMm: '18' })
const object = (lengthMm: string, px: number) =>
  unitOf(withKnown(EMPTY, { points: [at(0, 0), at(0, px)], lengthMm }), undefined, figures)

// The bounds are those of the server's rows.
test.each([
  ['60', 600, 'length'],
  ['0.5', 600, 'length'],
  ['18', 4, 'close'],
  ['18', 20, 'pixel'],
  ['2', 900, 'pixel'],
])('an object of %s mm over %i px gives no scale: %s', (lengthMm, px, fault) => {
  const unit = object(lengthMm, px)
  expect(unit.fault).toBe(fault)
  expect(unit.columnMm).toBeUndefined()
})

test('a tip on the end is as sure as two marks are', () => {
  const draft: Draft = {
    lines: { P: { ...EMPTY_LINE, points: [at(0, 0), at(0, 700)], tip: at(0, 700) } },
    known: { what: 'instrument', lengthMm: '18', points: [at(9, 0), at(9, 600)] },
  }
  const [least, most] = intervalsOf(lineOf(draft, 'P'), unitOf(draft, undefined, figures)).tipShortMm ?? []
  // By hand: two marks a pixel of 0.03 mm off each.
  expect(most).toBeCloseTo(1.96 * Math.SQRT2 * 0.03, 3)
  expect(least).toBeCloseTo(-(most ?? 0), 9)
})

test('without the figures a length is told and not how sure it is', () => {
  const draft = withKnown(
    { ...EMPTY, lines: { P: { ...EMPTY_LINE, points: [at(0, 0), at(0, 700)] } } },
    {
      points: [at(9, 0), at(9, 600)],
      lengthMm: '18',
    },
  )
  const unit = unitOf(draft, undefined, undefined)
  expect(saidOf(lineOf(draft, 'P'), unit).lengthMm).toBeCloseTo(21, 9)
  expect(intervalsOf(lineOf(draft, 'P'), unit)).toEqual({})
})
