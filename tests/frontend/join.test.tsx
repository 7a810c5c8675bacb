import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Account } from '@/screens/account/account'
import { Join } from '@/screens/join/join'
import { SignIn } from '@/screens/sign-in/sign-in'
import { membership, session, sessionState, workIn } from '@/store/session/session'
import { signedIn, somebody } from './people'
import { problem, type Sent, serve } from './server'

const SEEN = {
  programme: { id: 'p1', name: 'Check programme', invented: false },
  role: 'student',
  group: 'Monday',
  name: 'Nour',
  username: 'nour',
  ends_at: '2126-03-01T10:00:00Z',
  has_account: false,
}

let seen: object

beforeEach(() => {
  seen = SEEN
  session.value = undefined
  sessionState.value = 'out'
  history.replaceState(null, '', '/join#secret')
})

afterEach(() => {
  cleanup()
  vi.unstubAllGlobals()
  history.replaceState(null, '', '/')
})

const page = () => <Join signIn={(above) => <SignIn above={above} />} />
const answers = ({ path }: Sent) => (path === 'join/link' ? { body: seen } : { body: somebody('Nour') })
const type = async (label: string, value: string) =>
  fireEvent.input(await screen.findByLabelText(label), { target: { value } })
const press = async (name: string) => fireEvent.click(await screen.findByRole('button', { name }))

describe('a link', () => {
  test('that names somebody asks for a password alone, and signs them in', async () => {
    const sent = serve(answers)
    render(page())
    await screen.findByText('You are Nour.')
    await type('Choose a password', 'a few words of mine')
    await press('Join')
    await waitFor(() => expect(sessionState.value).toBe('in'))
    expect(sent.map(({ path, body }) => [path, body])).toEqual([
      ['join/link', { invitation: 'secret' }],
      ['join/new-account', { invitation: 'secret', username: 'nour', name: 'Nour', password: 'a few words of mine' }],
    ])
    await waitFor(() => expect(location.href).not.toContain('secret'))
  })

  test('that names nobody asks for both names, and shows what is wrong where it stands', async () => {
    seen = { ...SEEN, name: '', username: '' }
    const wrong = { pointer: '#/username', detail: 'This user name has an account.' }
    serve((sent) => (sent.path === 'join/link' ? answers(sent) : problem(422, 'not-usable', [wrong])))
    render(page())
    await type('Your name, as others see it', 'Nour')
    await type('User name, to sign in with', 'tom')
    await type('Choose a password', 'a few words of mine')
    await press('Join')
    expect((await screen.findByRole('alert')).textContent).toBe(wrong.detail)
    // It counts on: another name is typed over it.
    expect(location.hash).toBe('#secret')
  })

  test('for somebody who has an account asks them to sign in, and then to join', async () => {
    seen = { ...SEEN, has_account: true }
    const sent = serve(answers)
    render(page())
    await type('User name', 'nour')
    await type('Password', 'what they have')
    await press('Sign in')
    await screen.findByText('You are signed in as Nour.')
    await press('Join')
    await waitFor(() => expect(location.pathname).toBe('/'))
    const changes = sent.filter(({ method }) => method === 'POST')
    expect(changes.map(({ path }) => path)).toEqual(['join/link', 'session', 'join'])
  })

  test('that leads to a further programme has this phone work in it', async () => {
    signedIn('Nour')
    const both = somebody('Nour')
    const [first] = both.memberships
    both.memberships.push({
      ...first,
      programme: { id: 'p2', name: 'Spring course', invented: false },
    } as typeof first & object)
    serve(({ path }) => (path === 'join/link' ? { body: seen } : { body: both }))
    render(page())
    await press('Join')
    await waitFor(() => expect(membership.value?.programme.name).toBe('Spring course'))
    cleanup()
    render(<Account />)
    await screen.findByRole('button', { name: 'Work in Check programme' })
    await workIn('p1')
    expect(membership.value?.programme.name).toBe('Check programme')
  })

  test('of which the server says no more is told, and a whole one is asked for where it was cut', async () => {
    const sent = serve(() => problem(410, 'invitation-refused'))
    render(page())
    await screen.findByText('Refused: invitation-refused.')
    cleanup()
    history.replaceState(null, '', '/join')
    render(page())
    await screen.findByText(/This is no whole link/)
    expect(sent).toHaveLength(1)
  })

  test('without an answer is looked at again', async () => {
    let away = true
    serve((sent) => (away ? 'nothing' : answers(sent)))
    render(page())
    await screen.findByText(/No answer from the server/)
    away = false
    await press('Try again')
    await screen.findByText('You are Nour.')
  })

  test('is not for who happens to be signed in on this phone', async () => {
    signedIn('Tom')
    const sent = serve((each) => (each.method === 'DELETE' ? { status: 204 } : answers(each)))
    render(page())
    await screen.findByText('You are signed in as Tom.')
    await press('That is not me: sign out')
    await screen.findByText('You are Nour.')
    expect(sent.some(({ path }) => path === 'join')).toBe(false)
  })
})
