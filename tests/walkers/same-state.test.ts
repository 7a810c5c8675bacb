import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { RunSheet, Setting } from '@/api/shapes'
import { CaseState } from '@/walk/course'
import type { CourseEvent } from '@/walk/course-event'

interface Told {
  plans: Record<string, Record<string, RunSheet>>
  states: { setting: Setting; events: CourseEvent[]; expect: Record<string, unknown> }[]
}

// What was folded in Python: `agrees` in state.py writes it and starts this file.
const { plans, states } = JSON.parse(readFileSync(process.env.TOLD ?? '', 'utf8')) as Told

const inOrder = (names: Iterable<string>) => [...names].sort()

function stateOf(course: CaseState): Record<string, unknown> {
  const canals = Object.entries(course.canals)
  return {
    canals: Object.fromEntries(canals.map(([name, { walk, state }]) => [name, [walk.at, state, walk.stop()]])),
    sign_offs: Object.fromEntries(
      canals.map(([name, { asking, coming, askedBy, reopened }]) => [
        name,
        [asking, coming, askedBy, inOrder(reopened)],
      ]),
    ),
    out_of_course: course.outOfCourse,
    undone: inOrder(course.undone),
    halted_by: course.haltedBy,
    saline_by: course.salineBy,
    emergencies: course.emergencies.open.map((emergency) => [
      emergency.id,
      emergency.what,
      emergency.correctedBy,
      emergency.comingBy,
    ]),
    missing: course.missing,
    visit: [course.visit.closed, course.visit.onSite, course.visit.dam],
    check_due: course.visit.checkDue,
    turned_to: course.turnedTo,
    taken_over: course.takenOver.by,
    revoked_by: course.revokedBy,
    plan: course.plan,
  }
}

test('the phone comes to the same state', () => {
  expect(states.length).toBeGreaterThan(0)
  for (const { setting, events, expect: expected } of states) {
    const state = stateOf(new CaseState(plans, events, setting))
    const asked = Object.fromEntries(Object.keys(expected).map((name) => [name, state[name]]))
    expect(asked, `after ${JSON.stringify(events.slice(-3))}`).toEqual(expected)
  }
})
