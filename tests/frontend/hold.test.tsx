import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { EventPayload, EventShown, Running, RunSheet, SheetStep, Treatment, VersionShown } from '@/api/shapes'
import { Answer } from '@/panels/hold-point/answer'
import { Answered } from '@/panels/hold-point/answered'
import { SquareCode } from '@/screens/account/codes'
import { OnSiteSignOff } from '@/screens/chair/on-site-sign-off'
import { partners } from '@/screens/review/release'
import { whereTo } from '@/screens/worklist/waits-for'
import type { Chair } from '@/store/chair/chair'
import { approvedDespiteMissing, lastSignOff, sinceLastSignOff, wasFirst } from '@/store/chair/hold'
import { CaseState } from '@/walk/course'
import { signedIn } from './people'
import { eventOf, inForce } from './sample-events'
import { serve } from './server'

const shared = JSON.parse(readFileSync(join(import.meta.dirname, '../shared/courses.json'), 'utf8'))
const sheet = shared.sheets.hold as RunSheet
const NODE = sheet.nodes.word as SheetStep

const image = { payload: { kind: 'step', exit: 'done' }, node: 'image' } as const
const signedOff = (exit: 'approved' | 'returned', by: string, more: object = {}) => ({
  payload: { kind: 'sign_off', exit, reason: '', despite_missing: false, on_site: false, ...more } as EventPayload,
  node: 'word',
  by,
})

type Event = { payload: EventPayload; node: string; by?: string; canal?: string }

/** A chair at which these events are stored, in their order; what is recorded goes to `recorded`. */
function chairWith(events: readonly Event[]) {
  const shown = events.map(({ payload, node, by = 'Ines', canal = 'MB1' }, i) => ({
    id: `e${i + 1}`,
    position: i + 1,
    server_time: `2026-03-05T12:0${i}:00Z`,
    actor: { id: `id of ${by}`, name: by },
    plan_hash: 'A',
    canal,
    node,
    payload,
  })) as unknown as EventShown[]
  const happened = shown.map(({ id, actor, canal, node, payload }) =>
    eventOf({ id, kind: payload.kind, actor: actor.id, canal, node, payload }),
  )
  const recorded: { canal: string; node: string; payload: EventPayload }[] = []
  const chair = {
    caseId: 'c1',
    version: { case_id: 'c1', hash: 'A' } as VersionShown,
    plan: { canals: [{ canal: 'MB1', length: { state: 'settled' }, run_sheet: sheet }] },
    course: new CaseState({ A: { MB1: sheet } }, [inForce('A'), ...happened], 'extracted'),
    events: happened,
    waiting: [],
    treatment: { position: shown.length, events: shown } as unknown as Treatment,
    record: async (canal: string, node: string, payload: EventPayload) => {
      recorded.push({ canal, node, payload })
      return true
    },
  } as unknown as Chair
  return { chair, recorded }
}

beforeEach(() => signedIn('Dr Vale', 'supervisor'))

describe('a supervisor’s answer', () => {
  const answer = () => {
    const { chair, recorded } = chairWith([image])
    render(<Answer chair={chair} canal="MB1" />)
    return recorded
  }
  const click = (name: string) => fireEvent.click(screen.getByRole('button', { name }))

  test('approves in one touch, at the hold point on the screen', () => {
    const recorded = answer()
    click('Approve')
    expect(recorded).toMatchObject([
      { canal: 'MB1', node: 'word', payload: { exit: 'approved', despite_missing: false } },
    ])
  })

  test.each([
    ['Return', 'Return, with this reason', { exit: 'returned', despite_missing: false }],
    ['Let pass in spite', 'Let pass, with this reason', { exit: 'approved', despite_missing: true }],
  ])('%s: not without a reason', (open, go, payload) => {
    const recorded = answer()
    click(open)
    click(go)
    expect(screen.getByText('Say why, first.')).toBeTruthy()
    expect(recorded).toEqual([])
    fireEvent.input(screen.getByRole('textbox'), { target: { value: ' Blurred. ' } })
    click(go)
    expect(recorded).toMatchObject([{ payload: { ...payload, reason: 'Blurred.' } }])
  })

  test('has a reason at hand for an image that cannot be read', () => {
    const recorded = answer()
    click('Return')
    click('Not readable: repeat the image.')
    click('Return, with this reason')
    expect(recorded).toMatchObject([{ payload: { reason: 'Not readable: repeat the image.' } }])
  })

  test('comes to the chair: the canal goes on waiting', () => {
    const recorded = answer()
    click('Come to the chair')
    expect(recorded).toMatchObject([{ payload: { kind: 'come' } }])
  })
})

describe('sign-offs of a canal', () => {
  test('the last that counted, what was done since, and what was let pass', () => {
    const { chair } = chairWith([image, signedOff('returned', 'Dr Vale', { reason: 'Again.' }), image])
    expect(lastSignOff(chair, 'MB1')?.payload.exit).toBe('returned')
    expect(sinceLastSignOff(chair, 'MB1').map(({ id }) => id)).toEqual(['e3'])
    expect(approvedDespiteMissing(chair, 'MB1')).toEqual([])
    const passed = chairWith([image, signedOff('approved', 'Dr Vale', { despite_missing: true, reason: 'Seen.' })])
    expect(approvedDespiteMissing(passed.chair, 'MB1').map(({ payload }) => payload.reason)).toEqual(['Seen.'])
  })

  test('who came second is payload who was first, and what they said', () => {
    const { chair } = chairWith([
      image,
      signedOff('returned', 'Dr Amari', { reason: 'Blurred.' }),
      signedOff('approved', 'Dr Vale'),
    ])
    expect(wasFirst(chair, 'MB1')?.name).toBe('Dr Amari')
    render(<Answered chair={chair} canal="MB1" waits={false} />)
    expect(
      screen.getByText(/^Dr Amari was first, .* Your sign-off is kept in the record and moved nothing\.$/),
    ).toBeTruthy()
    expect(screen.getAllByText(/Returned by Dr Amari.*Blurred\./).length).toBeGreaterThan(0)
  })

  test('who was first is not payload so', () => {
    const { chair } = chairWith([
      image,
      signedOff('approved', 'Dr Vale'),
      signedOff('returned', 'Dr Amari', { reason: 'No.' }),
    ])
    expect(wasFirst(chair, 'MB1')).toBeUndefined()
  })
})

describe('an on-site sign-off', () => {
  const supervisors = [
    { id: 's1', name: 'Dr Vale', signs_on_site: true },
    { id: 's2', name: 'Dr Amari', signs_on_site: false },
  ]

  test('names the supervisor, the code, and the hold point and plan on the screen', async () => {
    signedIn('ines')
    const { chair } = chairWith([image])
    const sent = serve(({ path }) =>
      path === 'programmes/p1'
        ? { status: 200, body: { supervisors } }
        : {
            status: 422,
            body: {
              type: '/api/v1/problems/code-refused',
              detail: 'no',
              errors: [{ pointer: '#/code', code: 'code-refused', detail: 'This code is wrong. 4 more tries.' }],
            },
          },
    )
    render(<OnSiteSignOff chair={chair} canal="MB1" node={NODE} onClose={() => undefined} />)
    const who = await screen.findByLabelText('Supervisor')
    // Who has no codes is not on offer.
    expect([...who.querySelectorAll('option')].map((option) => option.textContent)).toEqual(['Who are you?', 'Dr Vale'])
    fireEvent.change(who, { target: { value: 's1' } })
    fireEvent.input(screen.getByLabelText('One-time code'), { target: { value: '123 456' } })
    fireEvent.click(screen.getByRole('button', { name: 'Give this answer', hidden: true }))
    await waitFor(() => expect(sent.at(-1)?.path).toBe('cases/c1/on-site-sign-offs'))
    expect(sent.at(-1)?.body).toMatchObject({
      supervisor_id: 's1',
      code: '123 456',
      plan_hash: 'A',
      canal: 'MB1',
      node: 'word',
      exit: 'approved',
      despite_missing: false,
    })
    expect(await screen.findByText('This code is wrong. 4 more tries.')).toBeTruthy()
    expect((screen.getByLabelText('One-time code') as HTMLInputElement).value).toBe('')
  })
})

test('a square code has its rows, and four modules of margin (ISO/IEC 18004)', () => {
  const { container } = render(<SquareCode rows={['10', '01']} says="code" />)
  expect(container.querySelector('svg')?.getAttribute('viewBox')).toBe('0 0 10 10')
  expect(container.querySelector('path')?.getAttribute('d')).toBe('M4 4h1v1h-1zM5 5h1v1h-1z')
})

describe('canals that wait with a returned one', () => {
  const canals = [
    { canal: 'MB1', joins: null },
    { canal: 'MB2', joins: 'MB1' },
    { canal: 'DB', joins: null },
  ]
  const of = { plan: { canals } } as unknown as VersionShown

  // As in tests/cases/test_release.py: what the screen foretells is what the server does.
  test.each([
    [[], {}],
    [['DB'], {}],
    [['MB2'], { MB1: 'MB2' }],
    [['MB1'], { MB2: 'MB1' }],
    [['MB1', 'MB2'], {}],
  ])('%j', (returned, expected) => {
    expect(partners(of, returned)).toEqual(expected)
  })
})

test('from the list one goes to the hold point that was asked for', () => {
  const canal = (name: string, hold_point: string, asked: boolean) => ({ canal: name, hold_point, asked })
  const running = (halted: boolean, ...canals: object[]) => ({ case_id: 'c1', halted, canals }) as unknown as Running
  expect(whereTo(running(false, canal('MB', 'length', false), canal('D', 'cone', true)))).toBe('/cases/c1/sign-off/D')
  expect(whereTo(running(false, canal('MB', 'length', false), canal('D', '', false)))).toBe('/cases/c1/sign-off/MB')
  expect(whereTo(running(true, canal('MB', 'length', true)))).toBe('/cases/c1/chair')
  expect(whereTo(running(false, canal('D', '', false)))).toBe('/cases/c1/chair')
})
