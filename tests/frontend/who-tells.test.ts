import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { EVENTS } from '@/walk/registry'

// Written by hand from the decision on who works a case; the server is held to it through its API.
const shared = read('who-tells.json')

function read(name: string): Record<string, string[]> {
  return JSON.parse(readFileSync(join(import.meta.dirname, '../shared', name), 'utf8'))
}

test('the phone offers by the table that the server refuses by', () => {
  const own = Object.entries(EVENTS).map(([kind, { toldBy }]) => [kind, [...toldBy].sort()])
  const theirs = Object.entries(shared).map(([kind, parts]) => [kind, [...parts].sort()])
  expect(Object.fromEntries(own)).toEqual(Object.fromEntries(theirs))
})

test('the phone offers to take back by the table that the server takes back by', () => {
  const own: Record<string, string[]> = { never: [], last: [], any_time: [] }
  for (const [kind, { undo }] of Object.entries(EVENTS)) own[undo]?.push(kind)
  const sorted = (table: Record<string, string[]>) =>
    Object.fromEntries(Object.entries(table).map(([undo, kinds]) => [undo, [...kinds].sort()]))
  expect(sorted(own)).toEqual(sorted(read('taken-back.json')))
})
