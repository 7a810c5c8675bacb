import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import { getCase } from '@/api/calls'
import { SignIn } from '@/screens/sign-in/sign-in'
import { read, readDevice, write } from '@/store/device/database'
import { findSession, session, sessionState, signOut } from '@/store/session/session'
import { signedIn, somebody } from './people'
import { NOBODY, problem, serve } from './server'

beforeEach(() => {
  session.value = undefined
  sessionState.value = 'asking'
})

const remembered = (name: string) => async () => {
  serve(() => ({ body: somebody(name) }))
  await findSession()
  session.value = undefined
  sessionState.value = 'asking'
}

describe('at the start', () => {
  test('nobody known, nobody signed in: sign in', async () => {
    serve(() => NOBODY)
    await findSession()
    expect(sessionState.value).toBe('out')
  })

  test('the server says who it is', async () => {
    serve(() => ({ body: somebody('Priya') }))
    await findSession()
    expect([sessionState.value, session.value?.person.name]).toEqual(['in', 'Priya'])
  })

  test('without a connection whoever signed in last goes on', async () => {
    await remembered('Priya')()
    serve(() => 'nothing')
    await findSession()
    expect([sessionState.value, session.value?.person.name]).toEqual(['in', 'Priya'])
  })

  test.each([
    { status: 401, html: '<h1>Sign in to this network</h1>' },
    { html: '<h1>Sign in to this network</h1>' },
    { body: {} },
    { status: 204 },
    problem(503, 'store-away'),
  ])('whoever signed in last goes on, whatever else answers: %o', async (answer) => {
    await remembered('Priya')()
    serve(() => answer)
    await findSession()
    expect([sessionState.value, session.value?.person.name]).toEqual(['in', 'Priya'])
  })

  test('known here but signed out there: sign in again, as the same person', async () => {
    await remembered('Priya')()
    serve(() => NOBODY)
    await findSession()
    expect([sessionState.value, session.value?.person.name]).toEqual(['expired', 'Priya'])
  })
})

test('signed out in another tab: nobody is left here', async () => {
  signedIn('Priya')
  serve(() => NOBODY)
  await findSession()
  expect([sessionState.value, session.value]).toEqual(['out', undefined])
})

test('an answer 401 in the middle of work asks to sign in again', async () => {
  signedIn('Priya')
  serve(() => problem(401, 'not-authenticated'))
  await getCase('c1').catch(() => undefined)
  expect(sessionState.value).toBe('expired')
})

test('signing out takes the copies away and leaves what was typed', async () => {
  signedIn('Priya')
  await write('kept', 'id of Priya', 'cases', ['a'])
  await write('drafts', 'id of Priya', 'new case', { alias: 'Reed' })
  serve(() => ({ status: 204 }))
  await signOut()
  expect(sessionState.value).toBe('out')
  expect(await read('kept', 'id of Priya', 'cases')).toBeUndefined()
  expect((await read('drafts', 'id of Priya', 'new case'))?.value).toEqual({ alias: 'Reed' })
  expect(await readDevice('session')).toBeUndefined()
})

describe('the form', () => {
  const fill = () => {
    fireEvent.input(screen.getByLabelText('User name'), { target: { value: ' ines ' } })
    fireEvent.input(screen.getByLabelText('Password'), { target: { value: 'secret ' } })
    fireEvent.submit(screen.getByRole('form', { name: 'Sign in' }))
  }

  test('lets password managers in, and sends the password untouched', async () => {
    const seen = serve(({ method }) => (method === 'GET' ? NOBODY : { body: somebody('Ines') }))
    render(<SignIn />)
    expect(screen.getByLabelText('User name').getAttribute('autocomplete')).toBe('username')
    expect(screen.getByLabelText('Password').getAttribute('autocomplete')).toBe('current-password')
    fill()
    await expect.poll(() => sessionState.value).toBe('in')
    expect(seen.at(-1)?.body).toEqual({ username: 'ines', password: 'secret ' })
  })

  test.each([
    [problem(401, 'not-signed-in'), 'User name and password do not fit together. Check both and try again.'],
    [problem(429, 'throttled'), 'Refused: throttled.'],
    ['nothing' as const, 'No answer from the server. Check the connection and try again.'],
  ])('says why not', async (answer, says) => {
    serve(({ method }) => (method === 'GET' && answer !== 'nothing' ? NOBODY : answer))
    render(<SignIn />)
    fill()
    expect(await screen.findByText(says)).toBeTruthy()
    expect((screen.getByLabelText('User name') as HTMLInputElement).value).toBe(' ines ')
  })
})
