import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, expect, test, vi } from 'vitest'
import type { CanalPlan, EventPayload, Plan, RunSheet, SheetStep } from '@/api/shapes'
import { Answer } from '@/panels/hold-point/answer'
import { AskedFor } from '@/parts/order/at-the-tray'
import { AskForSignOff } from '@/screens/chair/hold-point'
import { ImageAnswers } from '@/screens/chair/image-answers'
import type { Chair } from '@/store/chair/chair'
import { shownWith, standingWith, stillComing } from '@/store/chair/together'
import { CaseState } from '@/walk/course'
import { signedIn } from './people'
import { eventsOf, inForce, type Written } from './sample-events'

const shared = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/courses.json'), 'utf8')) as {
  sheets: Record<string, RunSheet>
}
const sheet = shared.sheets.hold as RunSheet
const CANALS = ['MB1', 'DB', 'P']
const IMAGED = ['MB1', 'DB']
let tooth = 0

const imaged = (canals: readonly string[]): Written[] =>
  canals.map((canal) => ({ canal, node: 'image', payload: { exit: 'done', no_image: 'film' } }))

/** The same, with its hold point under another name: a canal that waits for something else. */
const OTHER = JSON.parse(JSON.stringify(sheet).replaceAll('"word"', '"later"')) as RunSheet

/** Three canals at one technique; `behind` lies behind MB1 on the image. */
function chairAfter(events: readonly Written[], walked_before = '', ofP = sheet) {
  const happened = eventsOf(events)
  const first = CANALS.filter((name) => name !== walked_before)
  const exposures = [
    { canals: first, turned: false },
    ...(walked_before ? [{ canals: [walked_before], turned: true }] : []),
  ]
  const { phase } = sheet.nodes.image as SheetStep
  const stage = { phase, title: 'Length', hold_point: 'length', canals: CANALS, exposures, sign_offs: 1 }
  const plan = {
    canals: CANALS.map((canal) => ({
      canal,
      length: { state: 'settled' },
      run_sheet: canal === 'P' ? ofP : sheet,
    })),
    asks: { stages: [stage], sign_offs: 2, exposures: exposures.length },
  } as unknown as Plan
  const sheets = Object.fromEntries(CANALS.map((canal) => [canal, canal === 'P' ? ofP : sheet]))
  const record = vi.fn(async (_canal: string, _node: string, _told: EventPayload) => true)
  tooth += 1
  const chair = {
    caseId: `k${tooth}`,
    version: { hash: 'A' },
    plan,
    course: new CaseState({ A: sheets }, [inForce('A'), ...happened], 'extracted'),
    events: happened,
    waiting: [],
    treatment: { events: [] },
    record,
  } as unknown as Chair
  return { chair, record }
}

const payloads = (record: ReturnType<typeof chairAfter>['record']) =>
  record.mock.calls.map(([canal, node, { kind, ...body }]) => ({ canal, node, kind, ...body }))
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }))
const SIGN_OFF = sheet.nodes.word as SheetStep
// What a touch sets off here waits for promises alone: a turn later all of it is done.
const later = () => new Promise((resolve) => setTimeout(resolve))

beforeEach(() => signedIn('Ines'))

test('canals that stand at one point, and those still on their way to it', () => {
  const { chair } = chairAfter(imaged(IMAGED))
  expect(standingWith(chair, 'DB')).toEqual(['DB', 'MB1'])
  expect(stillComing(chair, 'DB')).toEqual(['P'])
})

test('one request asks for all canals that wait, as one act', async () => {
  const { chair, record } = chairAfter(imaged(IMAGED))
  render(<AskForSignOff chair={chair} canal="MB1" node={SIGN_OFF} />)
  press('Ask for MB1 and DB')
  await later()
  expect(payloads(record)).toMatchObject(IMAGED.map((canal) => ({ canal, node: 'word', kind: 'ask' })))
  const [first, two] = payloads(record) as unknown as { together: string }[]
  expect(first?.together).toBeTruthy()
  expect(first?.together).toBe(two?.together)
})

test('one request asks at different hold points too, of each canal at its own', async () => {
  const { chair, record } = chairAfter(imaged(CANALS), '', OTHER)
  render(<AskForSignOff chair={chair} canal="MB1" node={SIGN_OFF} />)
  press('Ask for MB1, DB and P')
  await later()
  expect(payloads(record).map(({ canal, node }) => [canal, node])).toEqual([
    ['MB1', 'word'],
    ['DB', 'word'],
    ['P', 'later'],
  ])
  expect(new Set(payloads(record).map((each) => (each as unknown as { together: string }).together)).size).toBe(1)
})

test('a canal may be left out of it', async () => {
  const { chair, record } = chairAfter(imaged(IMAGED))
  render(<AskForSignOff chair={chair} canal="MB1" node={SIGN_OFF} />)
  press('DB')
  press('Ask for sign-off')
  await later()
  expect(payloads(record)).toMatchObject([{ canal: 'MB1', together: '' }])
})

test('a supervisor answers for all of them in one touch', async () => {
  signedIn('Dr Vale', 'supervisor')
  const { chair, record } = chairAfter(imaged(CANALS))
  render(<Answer chair={chair} canal="MB1" />)
  press('Approve MB1, DB and P')
  await later()
  expect(payloads(record).map(({ canal, kind }) => [canal, kind])).toEqual(CANALS.map((canal) => [canal, 'sign_off']))
})

test('says that they come for each of them, with nothing that the server would not take', async () => {
  signedIn('Dr Vale', 'supervisor')
  const { chair, record } = chairAfter(imaged(CANALS))
  render(<Answer chair={chair} canal="MB1" />)
  press('Come to the chair')
  await later()
  expect(record.mock.calls).toEqual(CANALS.map((canal) => [canal, 'word', { kind: 'come', note: '' }]))
})

test('returns one of them with its reason, the others untouched', async () => {
  signedIn('Dr Vale', 'supervisor')
  const { chair, record } = chairAfter(imaged(IMAGED))
  render(<Answer chair={chair} canal="MB1" />)
  press('DB')
  press('Return')
  fireEvent.input(screen.getByRole('textbox'), { target: { value: 'Not readable.' } })
  press('Return, with this reason')
  await later()
  expect(payloads(record)).toMatchObject([{ canal: 'MB1', exit: 'returned', reason: 'Not readable.' }])
})

function image(walked_before: string, at: string) {
  const { chair, record } = chairAfter([], walked_before)
  const canal = chair.plan.canals.find((planned) => planned.canal === at) as CanalPlan
  const course = chair.course.canals[at]
  if (!course) throw new Error(at)
  render(<ImageAnswers chair={chair} canal={canal} course={course} node={sheet.nodes.image as SheetStep} />)
  return { chair, record }
}

test('one exposure is told of every canal that stands on it', async () => {
  const { chair, record } = image('P', 'DB')
  expect(shownWith(chair, 'DB')).toEqual(['DB', 'MB1'])
  press('On film')
  await later()
  expect(payloads(record).map(({ canal, kind }) => [canal, kind])).toEqual([
    ['DB', 'step'],
    ['MB1', 'step'],
  ])
})

test('what lies behind another canal has an exposure of its own', async () => {
  const { record } = image('P', 'P')
  press('On film')
  await later()
  expect(payloads(record).map(({ canal }) => canal)).toEqual(['P'])
})

test('the plan says how many sign-offs and exposures, and of which canals', () => {
  const { chair } = chairAfter([], 'P')
  render(<AskedFor plan={chair.plan} />)
  expect(screen.getByText('2 sign-offs by a supervisor, 2 exposures')).toBeTruthy()
  expect(screen.getByText('one sign-off · one exposure: MB1 and DB · from another angle: P')).toBeTruthy()
})
