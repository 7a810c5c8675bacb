import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Keys } from '@/screens/keys/keys'
import { signedIn } from './people'
import { problem, type Sent, serve } from './server'

const TEXT = 'fourthcanal_00_11'
const KEY = {
  id: 'k1',
  name: 'Nightly copy',
  scopes: ['cases:read'],
  made_by: { id: 'p', name: 'Priya' },
  made_at: '2026-03-01T10:00:00Z',
  ends_at: '2126-03-01T10:00:00Z',
  last_used_at: null,
}

let keys: object[]

beforeEach(() => {
  signedIn('Priya', 'student')
  keys = []
})

afterEach(() => {
  cleanup()
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
})

function answers({ method }: Sent) {
  if (method === 'POST') {
    keys.push(KEY)
    return { status: 201, body: { key: KEY, text: TEXT } }
  }
  if (method === 'DELETE') {
    keys.pop()
    return { status: 204 }
  }
  return { body: { results: [...keys] } }
}

const button = (name: string) => screen.findByRole('button', { name })

async function make() {
  fireEvent.click(await button('Make a key'))
  fireEvent.input(screen.getByLabelText('What it is for'), { target: { value: 'Nightly copy' } })
  fireEvent.click(screen.getByLabelText('see cases, plans and what was done'))
  fireEvent.input(screen.getByLabelText('Your password, once more'), { target: { value: 'secret' } })
  fireEvent.click(await button('Make a key'))
}

describe('a key', () => {
  test('is made of a name, scopes, days and the password, shown once, and listed without its text', async () => {
    const sent = serve(answers)
    render(<Keys />)
    await screen.findByText('No keys yet.')
    await make()
    await screen.findByText(TEXT)
    const made = sent.find(({ method }) => method === 'POST')
    expect(made).toMatchObject({ path: 'keys' })
    expect(made?.body).toEqual({ name: 'Nightly copy', scopes: ['cases:read'], days: 90, password: 'secret' })
    fireEvent.click(await button('I have it'))
    expect(screen.queryByText(TEXT)).toBeNull()
    await screen.findByText('Ends 1 Mar 2126, never used')
  })

  test('is shown although the list of keys does not come', async () => {
    serve((sent) => (sent.method === 'GET' && keys.length > 0 ? 'nothing' : answers(sent)))
    render(<Keys />)
    await make()
    await screen.findByText(TEXT)
  })

  test("whose answer was lost stands in the list, and is said to be nobody's", async () => {
    serve((sent) => {
      const answer = answers(sent)
      return sent.method === 'POST' ? 'nothing' : answer
    })
    render(<Keys />)
    await screen.findByText('No keys yet.')
    await make()
    await screen.findByText(/If the list shows a key of this name now, nobody has it/)
    await screen.findByText('Nightly copy')
    expect(screen.queryByText(/What you typed is kept/)).toBeNull()
  })

  test('that cannot be copied says how else to take it', async () => {
    serve(answers)
    vi.spyOn(navigator.clipboard, 'writeText').mockRejectedValue(new DOMException('denied'))
    render(<Keys />)
    await make()
    fireEvent.click(await button('Copy the key'))
    await screen.findByText(/Press long on the key instead/)
  })

  test('is not made with a wrong password, and what was chosen stays', async () => {
    const wrong = { pointer: '#/password', detail: 'This is not your password.' }
    serve((sent) => (sent.method === 'POST' ? problem(422, 'password-wrong', [wrong]) : answers(sent)))
    render(<Keys />)
    await make()
    await screen.findByText('This is not your password.')
    expect(screen.getByLabelText('see cases, plans and what was done')).toHaveProperty('checked', true)
  })

  test('is revoked in two taps', async () => {
    keys = [KEY]
    const sent = serve(answers)
    render(<Keys />)
    fireEvent.click(await button('Revoke Nightly copy'))
    expect(sent.some(({ method }) => method === 'DELETE')).toBe(false)
    fireEvent.click(await button('Revoke it for good'))
    await screen.findByText('No keys yet.')
    expect(sent.find(({ method }) => method === 'DELETE')).toMatchObject({ path: 'keys/k1' })
  })
})

test('keys of services are for the coordinator', async () => {
  serve(answers)
  render(<Keys />)
  await screen.findByText('No keys yet.')
  expect(screen.queryByRole('region', { name: 'Services of the programme' })).toBeNull()
  cleanup()
  signedIn('Rosa', 'coordinator')
  render(<Keys />)
  await screen.findByRole('region', { name: 'Services of the programme' })
  fireEvent.click(screen.getAllByRole('button', { name: 'Make a key' })[1] as HTMLElement)
  expect(screen.queryByLabelText('decide on plans')).toBeNull()
})
