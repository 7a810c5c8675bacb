import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { RunSheet } from '@/api/shapes'
import { CaseState } from '@/walk/course'
import { lacking } from '@/walk/lacking'
import { eventsOf, inForce, type Written } from './sample-events'

interface Case {
  name: string
  events: Written[]
  length: string
  lacking: string[]
}

const read = (name: string) => JSON.parse(readFileSync(join(import.meta.dirname, `../shared/${name}.json`), 'utf8'))
const sheet = read('courses').sheets.hold as RunSheet

test.each((read('lacking').cases as Case[]).map((sample) => [sample.name, sample] as const))('%s', (_, sample) => {
  const events = eventsOf(sample.events, { canal: 'MB1' })
  const course = new CaseState({ A: { MB1: sheet } }, [inForce('A'), ...events], 'extracted')
  const canal = course.canals.MB1
  if (!canal) throw new Error('no canal')
  expect(lacking('MB1', canal, sample.length, events, sheet, course.undone)).toEqual(sample.lacking)
})
