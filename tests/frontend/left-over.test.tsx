import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import type { EventGiven } from '@/api/shapes'
import { LeftOverList } from '@/screens/cases/left-over'
import { database } from '@/store/device/database'
import { asideName, fileOf, leftOver } from '@/store/outbox/left-over'
import { type NewEvent, writeEvent } from '@/store/outbox/record'
import { send } from '@/store/outbox/sender'
import { signedIn } from './people'
import { problem, serve } from './server'
import { until } from './until'

// What waits is counted, said, saved and set aside; the server is one that takes a device's events in their order, each
// once, and refuses what is named `bad`.

let number = 0
let me = ''

beforeEach(() => {
  number += 1
  signedIn(`Priya left ${number}`)
  me = `id of Priya left ${number}`
})

const done = (node: string) =>
  ({
    plan_hash: 'h',
    seen_position: 0,
    canal: 'MB',
    node,
    payload: { kind: 'step', exit: 'done' },
  }) as unknown as NewEvent

function keeper() {
  const stored: EventGiven[] = []
  serve(({ method, body }) => {
    const answer = { body: { position: stored.length, course: null, canals: [], events: stored } }
    if (method === 'GET') return answer
    const { events } = body as { events: EventGiven[] }
    const bad = events.findIndex((event) => event.node === 'bad')
    if (bad >= 0) return problem(422, 'not-usable', [{ pointer: `#/events/${bad}`, detail: 'A slip.' }])
    for (const event of events) {
      if (stored.some((known) => known.id === event.id)) continue
      if (event.device_seq !== stored.length + 1) return problem(409, 'sequence-gap')
      stored.push(event)
    }
    return { body: { position: stored.length, course: null, canals: [], events: stored } }
  })
  return stored
}

async function work(stored: readonly EventGiven[], ...nodes: string[]) {
  for (const node of nodes) await writeEvent('case-1', done(node))
  await until(async () => {
    await send()
    expect(stored.map((event) => event.node)).toEqual(['a'])
    expect((await leftOver())[0]?.work[0]?.refused).toBe('A slip.')
  })
}

test('the list says which case, how many, and why', async () => {
  const stored = keeper()
  await work(stored, 'a', 'bad', 'c')
  const known = { id: 'case-1', patient_alias: 'Reed', tooth: { iso: '26' } }
  render(<LeftOverList cases={[known] as never} />)
  await waitFor(() => expect(screen.getByText('26 Reed')).toBeTruthy())
  expect(screen.getByText(/2 entries, since/)).toBeTruthy()
  expect(screen.getByRole('alert').textContent).toContain('A slip.')
})

test('set aside, the rest goes on: its number is a note that says what and why, and the entry stays on the phone', async () => {
  const stored = keeper()
  await work(stored, 'a', 'bad', 'c')
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
  render(<LeftOverList cases={[]} />)
  await waitFor(() => expect(screen.getByRole('button', { name: 'Set it aside' })).toBeTruthy())
  fireEvent.click(screen.getByRole('button', { name: 'Set it aside' }))
  fireEvent.click(screen.getByText('Set it aside, with a note'))
  await until(() => expect(stored).toHaveLength(3))
  expect(stored.map(({ node, device_seq }) => [node, device_seq])).toEqual([
    ['a', 1],
    ['', 2],
    ['c', 3],
  ])
  expect(stored[1]?.payload).toMatchObject({
    kind: 'note',
    text: expect.stringMatching(/^Set aside .* a step.* A slip\.$/),
  })
  const kept = (await (await database()).get('device', asideName(me))) as { event: EventGiven }[]
  expect(kept.map(({ event }) => event.node)).toEqual(['bad'])
  await until(async () => expect(await leftOver()).toEqual([]))
})

test('what is saved says what it is and holds each entry as it would be sent, and nobody else’s', async () => {
  const stored = keeper()
  await work(stored, 'a', 'bad', 'c')
  const left = await leftOver()
  const content = JSON.parse(await fileOf(left, new Date('2026-03-05T12:00:00Z')).text())
  expect(content).toMatchObject({ saved_at: '2026-03-05T12:00:00.000Z', person: { id: me } })
  expect(content.what).toContain('not taken')
  expect(content.cases).toHaveLength(1)
  expect(content.cases[0]).toMatchObject({ case: 'case-1', work: [{ node: 'bad', refused: 'A slip.' }, { node: 'c' }] })
  signedIn('Somebody else')
  expect(await leftOver()).toEqual([])
})
