import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Systems } from '@/screens/systems/systems'
import { Worklist } from '@/screens/worklist/worklist'
import { signedIn } from './people'
import { problem, type Sent, serve } from './server'

const WEBHOOK = {
  id: 'w1',
  service: { id: 's', name: 'Image archive' },
  address: 'https://archive.example/hooks/4f1b-secret',
  kinds: [],
  state: 'given_up',
  reached: 7,
  waiting: 3,
  failing_since: '2026-11-28T10:00:00Z',
  given_up_at: '2026-11-30T10:00:00Z',
  made_by: { id: 'r', name: 'Rosa' },
  created_at: '2026-11-01T10:00:00Z',
  revision: 4,
}
const CLIENT = {
  id: 'c1',
  name: 'Course diary',
  acts_for: 'people',
  client_type: 'public',
  scopes: ['cases:read'],
  redirect_uris: ['https://diary.example/back'],
  made_by: { id: 'r', name: 'Rosa' },
  made_at: '2026-11-01T10:00:00Z',
}
const REGISTERED = {
  name: 'Courses',
  issuer: 'https://courses.example',
  client_id: 'canal',
  deployment_ids: ['1'],
  login_address: 'https://courses.example/authorize',
  token_address: 'https://courses.example/token',
  key_set_address: 'https://courses.example/keys',
  token_audience: '',
  teachers_supervise: false,
}
const PLATFORM = { ...REGISTERED, id: 'p1', active: true, grades_waiting: 1, last_refusal: '', created_at: '' }

let lists: Record<string, object[]>

beforeEach(() => {
  signedIn('Rosa', 'coordinator')
  lists = { webhooks: [WEBHOOK], clients: [CLIENT], 'lti-platforms': [PLATFORM] }
})

afterEach(() => {
  cleanup()
  vi.unstubAllGlobals()
})

function answers({ method, path }: Sent) {
  const list = path.split('/').find((part) => part in lists)
  if (list === undefined) return { body: { results: [], next: null } }
  if (method === 'PATCH') lists.webhooks = [{ ...WEBHOOK, state: 'active', revision: 5 }]
  if (method === 'DELETE') {
    lists.clients = []
    return { status: 204 }
  }
  if (method === 'PUT') lists['lti-platforms'] = [{ ...PLATFORM, active: false }]
  return { body: method === 'GET' ? { results: lists[list] } : lists[list]?.[0] }
}

const button = (name: string) => screen.findByRole('button', { name })

describe('other systems', () => {
  test('that were given up go on, and of an address its host alone is shown', async () => {
    const sent = serve(answers)
    render(<Systems />)
    await screen.findByText(/Given up, 3 messages wait, nothing taken since/)
    expect(screen.queryByText(/4f1b-secret/)).toBeNull()
    fireEvent.click(await button('Go on with archive.example'))
    await button('Pause archive.example')
    expect(sent.find(({ method }) => method === 'PATCH')).toMatchObject({ body: { state: 'active' } })
  })

  test('that sign in by OAuth are revoked in two taps', async () => {
    const sent = serve(answers)
    render(<Systems />)
    fireEvent.click(await button('Revoke Course diary'))
    expect(sent.some(({ method }) => method === 'DELETE')).toBe(false)
    fireEvent.click(await button('Revoke it for good'))
    await screen.findByText('None yet. They are added over the API.')
  })

  test('whose courses lead here are switched off with the password, and nothing else of them changes', async () => {
    const sent = serve(answers)
    render(<Systems />)
    await screen.findByText('On, 1 grade waits')
    fireEvent.click(await button('Switch Courses off'))
    fireEvent.input(screen.getByLabelText('Your password, once more'), { target: { value: 'secret' } })
    fireEvent.click(await button('Switch Courses off'))
    await button('Switch Courses on')
    const put = sent.find(({ method }) => method === 'PUT')
    expect(put?.body).toEqual({ ...REGISTERED, active: false, password: 'secret' })
  })

  test('stay as they are with a wrong password', async () => {
    const wrong = { pointer: '#/password', detail: 'This is not your password.' }
    serve((sent) => (sent.method === 'PUT' ? problem(422, 'password-wrong', [wrong]) : answers(sent)))
    render(<Systems />)
    fireEvent.click(await button('Switch Courses off'))
    fireEvent.input(screen.getByLabelText('Your password, once more'), { target: { value: 'wrong' } })
    fireEvent.click(await button('Switch Courses off'))
    await screen.findByText('This is not your password.')
  })
})

describe('a webhook that was given up', () => {
  test('is told at the top of what waits for the coordinator, with what to do', async () => {
    serve(answers)
    render(<Worklist />)
    await screen.findByText(/archive.example is told nothing any more, since .* See that it answers, then let it go on/)
    await button('Other systems')
  })

  test('is nothing that a supervisor is asked or told of', async () => {
    signedIn('Vale', 'supervisor')
    const sent = serve(answers)
    render(<Worklist />)
    await screen.findByText('Plans to decide on')
    expect(sent.some(({ path }) => path.includes('webhooks'))).toBe(false)
  })
})
