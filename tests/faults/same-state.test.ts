import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { RunSheet } from '@/api/shapes'
import { Course } from '@/walk/course'
import type { Happened } from '@/walk/happened'

interface Told {
  plan: string
  sheets: Record<string, RunSheet>
  states: { events: Happened[]; expect: unknown }[]
}

// What the server told of each case after a run of the fault test, which starts this file.
const { plan, sheets, states } = JSON.parse(readFileSync(process.env.STATES ?? '', 'utf8')) as Told

test('the phone comes to the state that the server tells', () => {
  expect(states.length).toBeGreaterThan(0)
  for (const state of states) {
    const course = new Course({ [plan]: sheets }, state.events, 'extracted')
    const canals = Object.entries(course.canals).map(([name, { walk, state }]) => [name, [walk.at, state, walk.stop()]])
    expect({
      canals: Object.fromEntries(canals),
      out_of_course: course.outOfCourse,
      undone: [...course.undone].sort(),
      halted_by: course.haltedBy,
      saline_by: course.salineBy,
      missing: course.missing,
      check_due: course.visit.checkDue,
      turned_to: course.turnedTo,
      plan: course.plan,
    }).toEqual(state.expect)
  }
})
