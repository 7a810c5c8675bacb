import type { RecordAnswered, RecordValue } from '@/api/shapes'

const at = '2026-03-05T12:00:00Z'
const priya = { id: 'p', name: 'Priya', role: 'student' } as const
const vale = { id: 'v', name: 'Dr Vale', role: 'supervisor' } as const
const entry = { at, device_time: at, who: priya, canal: 'DB', kind: 'step', version: 1 } as const
const late = { device_time: '2026-03-05T11:20:00Z' }
const ok = { out_of_course: null, out_of_course_says: '', undone: false, not_checked_says: '' }
const step = { version: 1, pass_number: 1, phase: 'explore', instrument: '10/.02', position: null, how: null } as const
const none = { stop_mm: null, depth_mm: null, low_mm: null, high_mm: null, against_band: null, as_if_straight: false }

/** An invented course: one step taken back, one out of course, one left out, a pause that a supervisor ended. */
export const record: RecordValue = {
  notice: 'For training.',
  programme: 'Check programme',
  invented: false,
  case_id: 'k1',
  patient_alias: 'Bench 1',
  tooth: { iso: '26', universal: '14', palmer: 'UL6', palmer_glyph: '', name: 'Maxillary left first molar' },
  setting: 'extracted',
  student: priya,
  supervisor: vale,
  opened_at: at,
  position: 4,
  last_at: at,
  versions: [
    {
      number: 1,
      hash: 'h',
      technique: 'crown-down',
      kit: 'Check kit',
      author: priya,
      at,
      state: 'approved',
      decisions: [{ decision: 'approved', who: vale, at, note: 'Go on.', acknowledged: [], own_lengths: [] }],
    },
  ],
  canals: [
    {
      canal: 'DB',
      root: 'DB',
      reference_point: 'DB cusp',
      state: 'open',
      length: null,
      length_problem: 'No reading yet.',
      planned_size: '30/.04',
      largest_at_length: null,
      charted: 'orifice found, curvature 24°',
      end_mm: 18,
      joins: null,
      planned: {
        end_mm: 18,
        size: '30/.04',
        outline: [
          { from_reference_mm: 8, diameter_mm: 0.7 },
          { from_reference_mm: 18, diameter_mm: 0.3 },
        ],
      },
      done: {
        end_mm: 16.5,
        size: '10/.02',
        outline: [
          { from_reference_mm: 8, diameter_mm: 0.3 },
          { from_reference_mm: 16.5, diameter_mm: 0.1 },
        ],
      },
      differs: ['so far 10/.02', 'to 16.5'],
      steps: [
        {
          ...step,
          ...none,
          node: 'a',
          action: 'instrument',
          comparison: 'as_planned',
          stop_mm: 18,
          depth_mm: 16.5,
          low_mm: 17,
          high_mm: 18,
          against_band: 'shorter',
          position: 1,
          how: 'short',
        },
        { ...step, ...none, node: 'b', action: 'irrigate', instrument: null, comparison: 'left_out' },
        { ...step, ...none, node: 'c', action: 'irrigate', instrument: null, comparison: 'as_planned', position: 2 },
        { ...step, ...none, node: 'd', action: 'instrument', comparison: 'not_yet' },
      ],
    },
  ],
  entered: [],
  struck: [
    {
      canal: 'MB1',
      says: 'confirming image, set 16 mm',
      taken_by: { id: 'p', name: 'Priya', role: 'student' },
      taken_at: '2026-03-05T09:10:00Z',
      why: 'wrong_canal',
      who: { id: 'v', name: 'Vale', role: 'supervisor' },
      at: '2026-03-05T09:12:00Z',
    },
  ],
  images_put_right: [
    {
      image_id: 'i1',
      purpose: 'length',
      canal: 'MB1',
      moved_to: 'DB',
      taken_by: { id: 'p', name: 'Priya', role: 'student' },
      taken_at: '2026-03-05T09:10:00Z',
      why: 'wrong_canal',
      who: { id: 'v', name: 'Vale', role: 'supervisor' },
      at: '2026-03-05T09:14:00Z',
    },
  ],
  cautions: [{ code: 'x', severity: 'caution', canal: null, says: 'Wall is thin.', version: 1, settled: 'overridden' }],
  overrides: [],
  asked: { sign_offs: 2, exposures: 1, planned_sign_offs: 4, planned_exposures: 6 },
  sign_offs: [
    {
      position: 4,
      canal: 'DB',
      hold_point: 'final-size',
      said: 'approved',
      despite_missing: true,
      on_site: true,
      reason: 'Clear.',
      who: vale,
      at,
      in_course: true,
      image_gone: true,
    },
  ],
  halts: [
    {
      position: 2,
      kind: 'pause',
      canal: 'DB',
      says: 'Paused: Not sure',
      cause: '',
      who: priya,
      at,
      ended: { position: 3, who: vale, at, reason: 'Seen.' },
      review_by: null,
      seen_again: null,
    },
  ],
  visits: [],
  irrigants: [{ irrigant: 'water', volume_ml: 2.5, canals: [{ canal: 'DB', volume_ml: 2.5 }] }],
  instruments: [
    { key: '10/.02 hand', instrument: '10/.02', canals: ['DB', 'DB'], discarded: 1, uses: 3, most_uses: 2 },
  ],
  discarded: [],
  images: [],
  deviations: [
    { sign: 'caution', canal: 'DB', says: 'left out: irrigate', position: null },
    { sign: 'note', canal: 'DB', says: '10/.02 stopped at 16.5, expected 17.0 to 18.0', position: 1 },
  ],
  timeline: [
    { ...entry, ...ok, position: 1, event_id: 'e1', says: '10/.02: at its stop, 18.0 mm', undone: true },
    { ...entry, ...ok, ...late, position: 2, event_id: 'e2', says: 'Paused: Not sure', kind: 'pause' },
    { ...entry, ...ok, position: 3, event_id: 'e3', says: 'Goes on: Seen.', kind: 'resume', who: vale },
    {
      ...entry,
      position: 4,
      event_id: 'e4',
      says: 'Irrigated: water, 2 ml',
      out_of_course: 'other_step',
      not_checked_says: '',
      out_of_course_says: 'another step was due',
      undone: false,
    },
  ],
  schema_version: 1,
}

export const answered: RecordAnswered = { hash: '5f'.repeat(32), record }
