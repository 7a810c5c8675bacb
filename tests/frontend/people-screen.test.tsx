import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { People } from '@/screens/people/people'
import { signedIn } from './people'
import { problem, type Sent, serve } from './server'

const LINK = 'https://canals.example/join#secret'
const INVITATION = {
  id: 'i1',
  name: 'Nour',
  username: 'nour',
  role: 'student',
  group: 'Monday',
  state: 'open',
  made_at: '2026-03-01T10:00:00Z',
  made_by: { id: 'r', name: 'Rosa' },
  ends_at: '2126-03-01T10:00:00Z',
  used_by: null,
  used_at: null,
}
const TOM = {
  person: { id: 't', name: 'Tom' },
  role: 'student',
  group: 'Friday',
  joined_at: '2026-03-01T10:00:00Z',
  treats_patients_until: null,
  external_id: null,
}
const NOUR = { name: 'Nour', username: 'nour', role: 'student', group: 'Monday' }
const LINES = [
  { line: 2, state: 'new', person: NOUR, faults: [] },
  { line: 3, state: 'member', person: { ...NOUR, name: 'Tom', username: 'tom' }, faults: [] },
  { line: 4, state: 'wrong', person: null, faults: [{ column: 'role', says: "'studnt' is no role." }] },
]

let people: object[]
let invited: object[]

beforeEach(() => {
  signedIn('Rosa', 'coordinator')
  people = [TOM]
  invited = []
})

afterEach(() => {
  cleanup()
  vi.unstubAllGlobals()
})

function answers({ method, path, body }: Sent) {
  const to = path.replace('programmes/p1/', '')
  if (to === 'people-list-check') return { body: { lines: LINES } }
  if (to === 'invitations' && method === 'POST') {
    invited = [INVITATION]
    return { body: { made: [{ invitation: INVITATION, link: LINK }], left_out: [] } }
  }
  if (to === 'invitations') return { body: { next: null, previous: null, results: invited } }
  if (to === 'people/t' && method === 'PATCH') {
    people = [{ ...TOM, ...(body as object) }]
    return { body: people[0] }
  }
  if (method === 'DELETE') {
    if (to === 'people/t') people = []
    else invited = []
    return { status: 204 }
  }
  return { body: { next: null, previous: null, results: people } }
}

const button = (name: string) => screen.findByRole('button', { name })
const press = async (name: string) => fireEvent.click(await button(name))

describe('the people of a programme', () => {
  test('one is invited, and their link is shown until it is handed out', async () => {
    const sent = serve(answers)
    render(<People />)
    await press('Invite one person')
    fireEvent.input(screen.getByLabelText('Name, as others see it'), { target: { value: ' Nour ' } })
    await press('Make the link')
    await screen.findByText(LINK)
    const made = sent.find(({ method, path }) => method === 'POST' && path === 'programmes/p1/invitations')
    expect(made?.body).toEqual({ people: [{ name: 'Nour', username: '', role: 'student', group: '' }] })
    await press('I have handed them out')
    expect(screen.queryByText(LINK)).toBeNull()
    await screen.findByRole('heading', { name: 'Nour' })
    await press('Withdraw Nour')
    await press('Withdraw the link')
    await screen.findByText('Nobody has a link that counts.')
  })

  test('what is wrong with one who is invited is said at its field', async () => {
    const wrong = { pointer: '#/people/0/username', detail: 'It has a sign that a user name cannot have.' }
    serve((sent) => (sent.method === 'POST' ? problem(422, 'not-usable', [wrong]) : answers(sent)))
    render(<People />)
    await press('Invite one person')
    await press('Make the link')
    const field = await screen.findByLabelText('User name, to sign in with')
    expect((await screen.findByRole('alert')).textContent).toBe(wrong.detail)
    expect(field.getAttribute('aria-invalid')).toBe('true')
  })

  test('of a list each line is said first, and those who are new are invited', async () => {
    const sent = serve(answers)
    render(<People />)
    await press('Take in a list')
    const file = new File(['name,user name,role,group\n'], 'class.csv', { type: 'text/csv' })
    fireEvent.change(screen.getByLabelText('The list (CSV)'), { target: { files: [file] } })
    await screen.findByText('1 to invite, 1 here already, 1 to put right')
    const lines = within(screen.getByRole('region', { name: 'Invite' })).getAllByRole('listitem')
    expect(lines.map((line) => line.textContent)).toEqual([
      "Line 4: has to be put rightrole: 'studnt' is no role.",
      'Line 2: Nour will be invited',
      'Line 3: Tom is here already',
    ])
    expect(sent.some(({ path }) => path === 'programmes/p1/people-list-check')).toBe(true)
    await press('Invite 1')
    await screen.findByText(LINK)
    const made = sent.find(({ method, path }) => method === 'POST' && path === 'programmes/p1/invitations')
    expect(made?.body).toEqual({ people: [NOUR] })
  })

  test('one gets another role, leave to treat patients until a day, and goes', async () => {
    const sent = serve(answers)
    render(<People />)
    await screen.findByText('Student, Friday, treats no patients')
    await press('Change Tom')
    fireEvent.input(screen.getByLabelText('May treat patients until'), { target: { value: '2126-07-01' } })
    await press('Save')
    await screen.findByText('Student, Friday, treats patients until 1 Jul 2126')
    expect(sent.find(({ method }) => method === 'PATCH')?.body).toEqual({
      role: 'student',
      group: 'Friday',
      treats_patients_until: '2126-07-01',
    })
    await press('Change Tom')
    await press('End it for Tom')
    await press('End it now')
    await screen.findByText('Nobody like that.')
  })

  test('whoever is looked for is found by name and by group', async () => {
    people = [TOM, { ...TOM, person: { id: 'a', name: 'Ada' }, group: 'Monday' }]
    serve(answers)
    render(<People />)
    await screen.findByRole('heading', { name: 'Ada' })
    fireEvent.input(screen.getByLabelText('Look for a name or a group'), { target: { value: 'mon' } })
    expect(screen.queryByRole('heading', { name: 'Tom' })).toBeNull()
    expect(screen.getByRole('heading', { name: 'Ada' })).toBeTruthy()
  })
})
