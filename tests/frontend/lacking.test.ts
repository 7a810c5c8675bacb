import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { RunSheet } from '@/api/shapes'
import { Course } from '@/walk/course'
import type { CourseEvent } from '@/walk/course-event'
import { lacking } from '@/walk/lacking'
import { inForce } from './in-force'

interface Case {
  name: string
  events: Partial<CourseEvent>[]
  length: string
  lacking: string[]
}

const read = (name: string) => JSON.parse(readFileSync(join(import.meta.dirname, `../shared/${name}.json`), 'utf8'))
const sheet = read('courses').sheets.hold as RunSheet

test.each((read('lacking').cases as Case[]).map((one) => [one.name, one] as const))('%s', (_, one) => {
  const events = one.events.map((event, i) => ({
    id: String(i + 1),
    kind: 'step' as const,
    actor: 's',
    plan: 'A',
    canal: 'MB1',
    node: '',
    body: {},
    ...event,
  }))
  const course = new Course({ A: { MB1: sheet } }, [inForce('A'), ...events], 'extracted')
  const canal = course.canals.MB1
  if (!canal) throw new Error('no canal')
  expect(lacking('MB1', canal, one.length, events, sheet, course.undone)).toEqual(one.lacking)
})
