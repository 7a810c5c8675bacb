import type { CanalPlan, InstrumentName, Length, Plan, StopRow } from '@/api/shapes'

// An invented lower molar with invented instruments; only its shape matters.
const CANALS = ['MB', 'ML', 'DB', 'DL', 'X1', 'X2'] as const

export function instrument(size: number, taper: number, motion: string, colour: string): InstrumentName {
  const name = `${size}/.${String(taper).padStart(2, '0')}`
  return {
    key: `${name} ${motion}`,
    name,
    size,
    taper,
    motion,
    colour,
    setting_says: 'not stated',
    setting_stated: true,
  }
}

/** Tip to the end of a cutting part of 16 mm. */
export function drawn(size: number, taper: number): { from_tip_mm: number; diameter_mm: number }[] {
  return [0, 16].map((from_tip_mm) => ({ from_tip_mm, diameter_mm: (size + taper * from_tip_mm) / 100 }))
}

export function length(stop_mm: number, state: Length['state'] = 'settled'): Length {
  return {
    state,
    working_length_mm: stop_mm + 0.2,
    stop_mm,
    estimate_mm: stop_mm,
    rests_on: ['confirming_image'],
    apart_mm: null,
    estimated: null,
    estimate_within_mm: null,
    from_estimate_mm: null,
    readings: [{ method: 'confirming_image', working_length_mm: stop_mm + 0.2, counts: true, why: 'Highest rank.' }],
    what_to_do: '',
  }
}

export function canal(name: string, end_mm: number, over: Partial<CanalPlan> = {}): CanalPlan {
  const orifice = 6
  return {
    canal: name,
    root: name[0] ?? 'M',
    reference_point: `${name} cusp`,
    length: length(end_mm),
    end_mm,
    junction_mm: null,
    joins: null,
    provisional: false,
    final_size: 40,
    final_taper: 3,
    size_range: {
      least: 30,
      most: 45,
      proposed: 30,
      options: [],
      reasons: [
        {
          code: 'floor',
          bound: 'least' as const,
          size: 30,
          says: 'Invented for this test.',
          row: 'final.floor',
          source: 'Invented for this test',
          know: 'programme rule',
        },
      ],
    },
    outline: [
      { from_reference_mm: orifice, diameter_mm: 1.3 },
      { from_reference_mm: 11, diameter_mm: 0.8 },
      { from_reference_mm: end_mm, diameter_mm: 0.4 },
    ],
    needle: {
      ceiling_mm: end_mm - 2,
      now: [{ after: '25/.03', at_most_mm: end_mm - 6 }],
      begins_mm: end_mm - 10,
      first_at_ceiling: null,
      says: '',
    },
    withheld: [],
    run_sheet: { canal: name, start: 'a', nodes: {}, walked_before: null, schema_version: 1 },
    expected_path: [],
    expectation: null,
    strain: [],
    wall: null,
    obturation: null,
    irrigants: [],
    rationales: [],
    ...over,
  }
}

const ENDS = [18.5, 18, 17, 17.5, 20, 21]

function stops(upTo: number, target: 'to_length' | 'to_resistance', n: number): StopRow['stops'] {
  return CANALS.slice(0, n).map((name, i) => {
    const end = name === 'ML' ? 14.5 : (ENDS[i] ?? 18)
    return { canal: name, stop_mm: Math.min(upTo, end), target, why: upTo < end ? 'stops.coronal' : 'stops.end' }
  })
}

/** A plan of `n` canals; the second joins the first. */
export function plan(n = 4): Plan {
  const joining = canal('ML', 14.5, { joins: 'MB', junction_mm: 14.7, length: length(18) })
  return {
    tooth: { iso: '37', universal: '18', palmer: 'LL7', palmer_glyph: '7⏋', name: 'lower left second molar' },
    setting: 'extracted',
    technique: 'crown-down',
    kit: 'Sample kit',
    irrigant: 'water',
    asks: null,
    canals: CANALS.slice(0, n).map((name, i) => (i === 1 ? joining : canal(name, ENDS[i] ?? 18))),
    stop_table: [
      { instrument: instrument(10, 2, 'hand', 'purple'), phase: 'Explore', stops: stops(30, 'to_length', n) },
      { instrument: instrument(15, 2, 'hand', 'white'), phase: 'Glide path', stops: stops(30, 'to_length', n) },
      { instrument: instrument(25, 9, 'continuous', 'red'), phase: 'Flare', stops: stops(9.5, 'to_resistance', n) },
      { instrument: instrument(35, 3, 'continuous', 'green'), phase: 'Descend', stops: stops(30, 'to_resistance', n) },
      { instrument: instrument(40, 3, 'continuous', 'black'), phase: 'Ascend', stops: stops(30, 'to_length', n) },
    ],
    tray: { changes: 9, steps: [{ phase: 'Explore', instrument: '10/.02 hand', canals: ['MB', 'ML'] }] },
    one_at_a_time: { changes: 21, steps: [{ phase: 'Explore', instrument: '10/.02 hand', canals: ['MB'] }] },
    tray_list: [
      { instrument: instrument(10, 2, 'hand', 'purple'), canals: ['MB', 'ML'], expected: true, outline: drawn(10, 2) },
    ],
    cautions: [
      {
        code: 'joins',
        severity: 'caution',
        canal: 'ML',
        says: 'ML joins MB.',
        do: 'Stop at the junction.',
        row: 'rule',
        value: null,
        limit: null,
        unit: null,
        step: null,
        know: 'from memory',
        may_override: false,
        overridden: null,
      },
    ],
    rows_used: [{ key: 'set_back', value: 1, unit: 'mm', source: 'Invented', know: 'from memory', programme: false }],
    difficulty: null,
    at_the_chair: { advice: [], contacts: [] },
    planner_version: '0',
    data_version: '0',
    notice: 'Training.',
    rationales: [],
    schema_version: 1,
  }
}
