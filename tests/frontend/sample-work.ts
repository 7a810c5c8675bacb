import type { EventPayload, Plan, RunSheet, SheetStep, Treatment, VersionShown } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import { CaseState } from '@/walk/course'
import { eventOf, inForce, type Written } from './sample-events'
import { canal, instrument, plan } from './sample-plan'

// Invented steps and sentences; only their shape matters.
export const HAND = '10/.02 hand'
export const ROTARY = '35/.03 continuous'

function step(
  id: string,
  action: SheetStep['action'],
  exits: SheetStep['exits'],
  over: Partial<SheetStep> = {},
): SheetStep {
  return {
    id,
    action,
    exits,
    phase: 'Descend',
    instrument: null,
    stop_um: null,
    target: null,
    shorter_than: null,
    hold_point: null,
    irrigant: null,
    volume_ml: null,
    needle_at_most_um: null,
    say: '',
    waits_for: [],
    kind: 'do',
    ...over,
  }
}

/** To resistance, irrigate, the small one again, EDTA, the end. */
export function sheet(name: string, stop_um: number): RunSheet {
  const water = { irrigant: 'sodium_hypochlorite', volume_ml: 2, needle_at_most_um: stop_um - 4000 }
  const nodes = [
    step(
      'shape',
      'instrument',
      { reached: 'rinse', short: 'rinse' },
      { instrument: ROTARY, stop_um, target: 'to_resistance', say: 'Invented reason of the step.' },
    ),
    step('rinse', 'irrigate', { done: 'small' }, water),
    step(
      'small',
      'recapitulate',
      { reached: 'edta', blocked: 'small' },
      { instrument: HAND, stop_um, target: 'to_length' },
    ),
    step(
      'edta',
      'irrigate',
      { done: 'again' },
      { ...water, irrigant: 'edta', volume_ml: 5, say: 'EDTA for a minute.' },
    ),
    step('again', 'instrument', { reached: 'end', short: 'end' }, { instrument: ROTARY, stop_um, target: 'to_length' }),
    { id: 'end', kind: 'end' as const, outcome: 'finished' as const, say: '' },
  ]
  return {
    canal: name,
    start: 'shape',
    nodes: Object.fromEntries(nodes.map((node) => [node.id, node])),
    walked_before: null,
    schema_version: 1,
  }
}

const PATH = ['shape', 'rinse', 'small', 'edta', 'again', 'end']

export function chairPlan(over: Partial<Plan> = {}): Plan {
  const row = { value: 1, unit: 'min', source: 'Invented', know: 'from memory', programme: false, says: '' }
  return {
    ...plan(1),
    irrigant: 'sodium_hypochlorite',
    canals: [
      canal('MB', 18.5, { run_sheet: sheet('MB', 18500), expected_path: PATH }),
      canal('DB', 17, { run_sheet: sheet('DB', 17000), expected_path: PATH }),
    ],
    tray: {
      changes: 2,
      steps: [
        { phase: 'Descend', instrument: ROTARY, canals: ['MB', 'DB'] },
        { phase: 'Descend', instrument: ROTARY, canals: ['MB', 'DB'] },
      ],
    },
    tray_list: [
      { instrument: instrument(10, 2, 'hand', 'purple'), canals: ['MB', 'DB'], expected: true, outline: [] },
      { instrument: instrument(35, 3, 'continuous', 'green'), canals: ['MB', 'DB'], expected: true, outline: [] },
    ],
    at_the_chair: {
      advice: [
        {
          about: 'emergency',
          key: 'collapse',
          says: 'First of all.',
          source: 'Invented A',
          know: 'from memory',
          settings: [],
        },
        {
          about: 'emergency',
          key: 'collapse',
          says: 'Then this.',
          source: 'Invented B',
          know: 'common practice',
          settings: [],
        },
        {
          about: 'pause',
          key: 'sensitivity',
          says: 'Wait a while.',
          source: 'Invented A',
          know: 'from memory',
          settings: [],
        },
        {
          about: 'look',
          key: 'every',
          says: 'Whole to its tip.',
          source: 'Invented A',
          know: 'from memory',
          settings: [],
        },
        { about: 'look', key: 'clinic', says: 'Once only.', source: 'Invented A', know: 'from memory', settings: [] },
        { about: 'discard', key: 'bent', says: 'Bent', source: 'Invented A', know: 'from memory', settings: [] },
      ],
      contacts: [{ irrigant: 'edta', about_s: 60, most_s: 600, rows: [{ key: 'rinse.edta_about_min', ...row }] }],
    },
    ...over,
  }
}

export interface Recorded {
  canal: string
  node: string
  payload: EventPayload
}

export const NOON = Date.parse('2026-03-05T12:00:00Z')

/** A chair after these events, the student's own unless they say otherwise, all at noon; what is recorded lands in `recorded`. */
export function chairAfter(events: readonly Written[], over: Partial<Plan> = {}, me = 'id of ines') {
  const made = chairPlan(over)
  const happened = events.map((event, i) => eventOf({ id: `e${i + 1}`, actor: me, canal: 'MB', ...event }))
  const sheets = Object.fromEntries(made.canals.map((planned) => [planned.canal, planned.run_sheet]))
  const recorded: Recorded[] = []
  const times = happened.map(({ id, actor }) => ({
    id,
    device_time: new Date(NOON).toISOString(),
    actor: { id: actor, name: actor },
  }))
  const chair: Chair = {
    caseId: 'c1',
    version: { case_id: 'c1', hash: 'A', plan: made } as VersionShown,
    plan: made,
    course: new CaseState({ A: sheets }, [inForce('A'), ...happened], 'extracted'),
    events: happened,
    waiting: [],
    treatment: { position: happened.length, events: times } as unknown as Treatment,
    record: async (canal, node, payload) => {
      recorded.push({ canal, node, payload })
      return true
    },
  }
  return { chair, recorded }
}

export const left = (node: string, exit: string, more: object = {}, canal = 'MB'): Written => ({
  kind: 'step',
  canal,
  node,
  payload: { exit, ...more },
})

const WAITS = { canal: 'MB', phases: [], nodes: ['again'], says: 'MB goes to the common end: it is prepared first.' }

/** DB is not worked before MB has come to its last step. */
export function joinedCanals(): Plan['canals'] {
  return chairPlan().canals.map((planned) => {
    const { shape } = planned.run_sheet.nodes
    if (planned.canal !== 'DB' || shape?.kind !== 'do') return planned
    return {
      ...planned,
      run_sheet: {
        ...planned.run_sheet,
        nodes: { ...planned.run_sheet.nodes, shape: { ...shape, waits_for: [WAITS] } },
      },
    }
  })
}
