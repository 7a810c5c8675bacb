import type { Expectation, ExpectedStep, Plan, Rationale } from '@/api/shapes'
import { canal, drawn, instrument, plan } from './sample-plan'

// Invented depths and widths; only their shape matters.
type Given = Pick<ExpectedStep, 'node' | 'instrument' | 'depth_mm'> & Partial<ExpectedStep>

export function expectation(end_mm: number, steps: readonly Given[], over: Partial<Expectation> = {}): Expectation {
  return {
    initial_shape: {
      points: [
        { from_reference_mm: 6, narrow_mm: 0.9, wide_mm: 1.4 },
        { from_reference_mm: end_mm, narrow_mm: 0.2, wide_mm: 0.3 },
      ],
      source: 'Invented for this test',
      know: 'from memory',
    },
    steps: steps.map((step) => ({
      pass_number: 1,
      low_mm: null,
      high_mm: null,
      short_below_mm: null,
      deep_above_mm: null,
      as_if_straight: false,
      reach_share: null,
      removes_mm3: 0.4,
      felt: null,
      shape: [
        { from_reference_mm: 6, diameter_mm: 1 },
        { from_reference_mm: end_mm, diameter_mm: 0.25 },
      ],
      ...step,
    })),
    series_passes: { expected: 2, low: 1, high: 3 },
    makes_room: false,
    samples: 500,
    few_agree: false,
    narrows: false,
    prepared: [],
    ...over,
  }
}

const HAND = '10/.02 hand'
const ROTARY = '35/.03 continuous'

/** Why a number is what it is, in invented words. */
export function rationale(of: string, over: Partial<Rationale> = {}): Rationale {
  return { of, rule: `Invented rule of ${of}.`, inputs: [], rows: ['set_back'], calculations: [], ...over }
}

/** A plan of two canals with what is expected: MB in three insertions, DB in two. */
export function forecast(over: Partial<Plan> = {}): Plan {
  const mb = [
    { node: 'a', instrument: HAND, depth_mm: 18.5 },
    { node: 'b', instrument: ROTARY, depth_mm: 15.2, low_mm: 14.4, high_mm: 16, reach_share: 0.04 },
    { node: 'b', pass_number: 2, instrument: ROTARY, depth_mm: 18.5, low_mm: 17, high_mm: 18.5, reach_share: 0.65 },
  ]
  const db = [
    { node: 'a', instrument: HAND, depth_mm: 17 },
    { node: 'b', instrument: ROTARY, depth_mm: 16.1, low_mm: 15.5, high_mm: 17, reach_share: 0.3 },
  ]
  return {
    ...plan(1),
    canals: [
      canal('MB', 18.5, {
        expectation: expectation(18.5, mb),
        rationales: [rationale('end_mm'), rationale('expectation')],
      }),
      canal('DB', 17, { expectation: expectation(17, db) }),
    ],
    tray: {
      changes: 3,
      steps: [
        { phase: 'Explore', instrument: HAND, canals: ['MB', 'DB'] },
        { phase: 'Descend', instrument: ROTARY, canals: ['MB', 'DB'] },
        { phase: 'Descend', instrument: ROTARY, canals: ['MB'] },
      ],
    },
    tray_list: [
      { instrument: instrument(10, 2, 'hand', 'purple'), canals: ['MB', 'DB'], expected: true, outline: drawn(10, 2) },
      { instrument: instrument(35, 3, 'continuous', 'green'), canals: ['MB'], expected: true, outline: drawn(35, 3) },
    ],
    ...over,
  }
}
