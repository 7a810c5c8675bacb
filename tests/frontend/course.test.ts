import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { RunSheet, Setting } from '@/api/shapes'
import { CaseState } from '@/walk/course'
import type { Emergency } from '@/walk/emergencies'
import { TooNew, Walk } from '@/walk/walk'
import { eventsOf, inForce, type Written } from './sample-events'

interface Case {
  name: string
  plans: Record<string, Record<string, string>>
  setting?: Setting
  /** No plan is in force before the first event; in all other cases `A` is. */
  from_nothing?: boolean
  events: Written[]
  expect: {
    canals: Record<string, { at: string; state: string; stop_um: number | null }>
    out_of_course?: Record<string, string>
    undone?: string[]
    halted?: boolean
    saline?: boolean
    emergencies?: Emergency[]
    closed?: boolean
    on_site?: string
    dam?: string
    check_due?: boolean
    missing?: string[]
    taken_over?: string
    turned_to?: string
    asking?: Record<string, string>
    coming?: Record<string, string>
    plan?: string
  }
}

// The worked cases that the server's fold answers too.
const shared = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/courses.json'), 'utf8')) as {
  sheets: Record<string, RunSheet>
  cases: Case[]
}

function sheetOf(name: string): RunSheet {
  const sheet = shared.sheets[name]
  if (!sheet) throw new Error(name)
  return sheet
}

function courseOf({ plans, events, setting = 'extracted', from_nothing = false }: Case): CaseState {
  const sheets = Object.entries(plans).map(([plan, canals]) => [
    plan,
    Object.fromEntries(Object.entries(canals).map(([canal, name]) => [canal, sheetOf(name)])),
  ])
  const [canal = ''] = Object.keys(plans.A ?? {})
  // What the file leaves out: a step by the student `s` on the plan `A` in the first canal.
  const happened = eventsOf(events, { canal })
  return new CaseState(Object.fromEntries(sheets), from_nothing ? happened : [inForce('A'), ...happened], setting)
}

function idsOf(course: CaseState, what: 'asking' | 'coming'): Record<string, string | null> {
  const canals = Object.entries(course.canals).filter(([, canal]) => canal[what] !== null)
  return Object.fromEntries(canals.map(([name, canal]) => [name, canal[what]]))
}

describe('the course of a tooth', () => {
  test.each(shared.cases.map((sample) => [sample.name, sample] as const))('%s', (_, sample) => {
    const course = courseOf(sample)
    const canals = Object.entries(course.canals).map(([name, { walk, state }]) => [
      name,
      { at: walk.at, state, stop_um: walk.stop() },
    ])
    expect({
      canals: Object.fromEntries(canals),
      out_of_course: course.outOfCourse,
      undone: [...course.undone].sort(),
      halted: course.haltedBy !== null,
      saline: course.salineBy !== null,
      closed: course.visit.closed,
      on_site: course.visit.onSite,
      dam: course.visit.dam,
      check_due: course.visit.checkDue,
      missing: course.missing,
      taken_over: course.takenOver.by,
      turned_to: course.turnedTo,
      ...(sample.expect.emergencies && { emergencies: course.emergencies.open }),
      asking: idsOf(course, 'asking'),
      coming: idsOf(course, 'coming'),
      plan: course.plan,
    }).toEqual({
      out_of_course: {},
      undone: [],
      halted: false,
      saline: false,
      closed: false,
      on_site: '',
      dam: null,
      check_due: false,
      missing: [],
      taken_over: '',
      turned_to: '',
      asking: {},
      coming: {},
      plan: 'A',
      ...sample.expect,
    })
  })
})

describe('a run sheet newer than the app stops the walk', () => {
  const sheet = sheetOf('passes')
  test.each([
    ['a step of another kind', { ...sheet.nodes.a, kind: 'wait' }],
    ['a question of another kind', { kind: 'ask', id: 'a', phase: 'p', question: { test: 'later' }, exits: {} }],
    ['a step that is missing', undefined],
  ])('%s', (_, node) => {
    const newer = { ...sheet, nodes: { ...sheet.nodes, a: node } } as unknown as RunSheet
    expect(() => new Walk(newer)).toThrow(TooNew)
  })
})
