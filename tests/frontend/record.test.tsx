import { render, screen, waitFor, within } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import { Record } from '@/screens/record/record'
import { writeEvent } from '@/store/outbox/record'
import { signedIn } from './people'
import { answered } from './sample-record'
import { serve } from './server'

// Names of kept things are shared by the tests of a file: each looks at a case of its own.
let number = 0
const fresh = () => `record-case-${++number}`

beforeEach(() => signedIn('Priya'))

async function shown(id = fresh()) {
  serve(({ path }) => (path === `cases/${id}/record` ? { body: answered } : 'nothing'))
  render(<Record id={id} />)
  await screen.findByText(/For training\./)
  return id
}

test('it says it is for training, and whose it is', async () => {
  const id = await shown()
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Record of 26')
  expect(screen.getByText(answered.hash)).toBeTruthy()
  expect(screen.getByRole('link', { name: 'Open as PDF' }).getAttribute('href')).toBe(`/api/v1/cases/${id}/record.pdf`)
})

test('an image that was removed is named with who and why, and is not drawn', async () => {
  const who = { id: 'p', name: 'Priya', role: 'student' } as const
  const at = '2026-03-05T12:00:00Z'
  const removed = { who: { ...who, name: 'Vale' }, at, reason: 'names_somebody' } as const
  const images = [{ position: 1, image: 'gone', purpose: 'length', canal: 'MB', who, at, removed }]
  const id = fresh()
  serve(({ path }) =>
    path === `cases/${id}/record` ? { body: { ...answered, record: { ...answered.record, images } } } : 'nothing',
  )
  render(<Record id={id} />)
  expect(await screen.findByText(/^Removed\. A name or number is written in it\. Vale, 5 Mar 2026/)).toBeDefined()
  expect(document.querySelector('.image-tile, .image-plate')).toBeNull()
})

test('the board says how each canal came out, and what was not as planned stands in one line with its place', async () => {
  await shown()
  expect(screen.getByText('DB: ends at 18.0 mm, so far 10/.02, to 16.5.')).toBeTruthy()
  expect(document.querySelectorAll('[data-drawn=done], [data-drawn=planned]')).toHaveLength(2)
  const lines = within(screen.getByRole('heading', { name: 'Not as planned: 2' }).parentElement as HTMLElement)
  expect(lines.getAllByRole('listitem').map((line) => line.textContent)).toEqual([
    'DB left out: irrigate',
    'DB 10/.02 stopped at 16.5, expected 17.0 to 18.01',
  ])
})

test('each entry is there once, what was taken back struck and said so', async () => {
  await shown()
  const entries = within(
    screen.getByRole('heading', { name: 'Timeline' }).closest('details') as HTMLElement,
  ).getAllByRole('listitem')
  expect(entries).toHaveLength(4)
  expect(entries[0]?.querySelector('del')?.textContent).toContain('10/.02: at its stop, 18.0 mm')
  expect(entries[0]?.textContent).toContain('Taken back.')
  expect(entries[1]?.querySelector('del')).toBeNull()
  expect(entries[3]?.textContent).toContain('Kept out of course: another step was due.')
})

test('what was charted of a canal stands with it', async () => {
  await shown()
  expect(screen.getByText('Orifice found, curvature 24°')).toBeTruthy()
})

test('the device’s own time is told where it is another', async () => {
  await shown()
  expect(screen.getAllByText(/device /)).toHaveLength(1)
})

test('work stands against the plan; what went as planned and is on every step stays quiet', async () => {
  await shown()
  const rows = screen.getAllByRole('row', { hidden: true }).slice(1)
  expect(rows.map((row) => row.textContent)).toEqual(['10/.0218.016.517.0–18.0 shorter', 'Irrigate left out'])
  expect(screen.getByText(/1 planned step is ahead/)).toBeTruthy()
})

test('a sign-off says in spite of what and where it was given', async () => {
  await shown()
  expect(screen.getByText(/final size: approved, in spite of what is missing, on site/)).toBeTruthy()
})

test('a halt says what ended it, an instrument used too often says so', async () => {
  await shown()
  expect(screen.getByText(/Went on: Dr Vale, .*: Seen\./)).toBeTruthy()
  expect(screen.getByText('3 of 2 too many')).toBeTruthy()
  expect(screen.getByText('1 discarded')).toBeTruthy()
})

test('with no connection the copy on the phone is shown, with when it was seen', async () => {
  const id = await shown()
  serve(() => 'nothing')
  render(<Record id={id} />)
  await waitFor(() => expect(screen.getAllByText(/No connection\. This is what was seen/).length).toBeGreaterThan(0))
  expect(screen.getAllByText('Wall is thin.').length).toBeGreaterThan(0)
})

test('what this phone has not sent yet is said to be missing', async () => {
  const id = fresh()
  serve(({ method }) => (method === 'GET' ? { body: answered } : 'nothing'))
  await writeEvent(id, { plan_hash: 'h', seen_position: 0, canal: 'DB', node: 'a', payload: { kind: 'turn' } })
  render(<Record id={id} />)
  expect(await screen.findByText(/1 entry of this phone has not been sent yet/)).toBeTruthy()
})
