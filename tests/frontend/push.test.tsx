import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Notified } from '@/screens/account/notified'
import { stopPush } from '@/store/session/push'
import { signIn } from '@/store/session/session'
import { noticeOf } from '@/worker/notice-of'
import { signedIn } from './people'
import { serve } from './server'
import { until } from './until'

// A point of the curve P-256 and its bytes, as the server and the browser have it.
const KEY = 'BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4'
const bytes = (key: string) => Uint8Array.from(Buffer.from(key, 'base64url')).buffer
const ENDPOINT = 'https://push.example.net/x'
const KEYS = { p256dh: 'p', auth: 'a' }

/** A browser's manager of subscriptions, as the Push API has it. */
class Manager {
  present: PushSubscription | null = null
  reaches = true

  readonly getSubscription = async () => this.present

  readonly subscribe = async ({ applicationServerKey }: { applicationServerKey: string }) => {
    if (!this.reaches) throw new DOMException('Registration failed', 'AbortError')
    this.present = {
      endpoint: ENDPOINT,
      options: { applicationServerKey: bytes(applicationServerKey), userVisibleOnly: true },
      toJSON: () => ({ endpoint: ENDPOINT, keys: KEYS }),
      unsubscribe: async () => {
        this.present = null
        return true
      },
    } as unknown as PushSubscription
    return this.present
  }
}

let manager: Manager
let permission: { permission: NotificationPermission; requestPermission: () => Promise<NotificationPermission> }

beforeEach(() => {
  signedIn('Dr Vale', 'supervisor')
  manager = new Manager()
  permission = { permission: 'default', requestPermission: async () => 'granted' }
  vi.stubGlobal('PushManager', Manager)
  vi.stubGlobal('Notification', permission)
  const serviceWorker = { getRegistration: async () => ({ pushManager: manager }) }
  vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { serviceWorker }))
})

afterEach(() => {
  cleanup()
  vi.unstubAllGlobals()
})

const server = () => serve(({ path }) => (path === 'push-key' ? { body: { key: KEY } } : { status: 204 }))
const button = (name: string) => screen.findByRole('button', { name })

describe('notifications on this device', () => {
  test('are allowed, stay on, and are stopped', async () => {
    const sent = server()
    render(<Notified />)
    fireEvent.click(await button('Notify me on this device'))
    await screen.findByText('On, on this device.')
    expect(sent.at(-1)).toMatchObject({ method: 'PUT', path: 'push-subscription' })
    expect(sent.at(-1)?.body).toEqual({ endpoint: ENDPOINT, ...KEYS })

    cleanup()
    render(<Notified />)
    fireEvent.click(await button('Stop on this device'))
    await screen.findByText('Off, on this device.')
    expect(sent.at(-1)).toMatchObject({ method: 'DELETE', path: 'push-subscription' })
    expect(manager.present).toBeNull()
  })

  test('that this browser does not have are not on offer', async () => {
    vi.stubGlobal('navigator', {})
    render(<Notified />)
    await screen.findByText(/cannot be notified here/)
    expect(screen.queryByRole('button')).toBeNull()
  })

  test('that are forbidden say where to allow them', async () => {
    permission.permission = 'denied'
    render(<Notified />)
    await screen.findByText(/Allow them in the browser’s settings/)
    expect(screen.queryByRole('button')).toBeNull()
  })

  test('are off where the reader says no, and nothing is sent', async () => {
    const sent = server()
    permission.requestPermission = async () => 'denied'
    render(<Notified />)
    fireEvent.click(await button('Notify me on this device'))
    await screen.findByText(/are forbidden on this device/)
    expect(sent).toEqual([])
  })

  test('cannot come where the browser does not reach its push service', async () => {
    server()
    manager.reaches = false
    render(<Notified />)
    fireEvent.click(await button('Notify me on this device'))
    await screen.findByText(/push service could not be reached/)
  })

  test('are not on where the server was not told', async () => {
    serve(({ path }) => (path === 'push-key' ? { body: { key: KEY } } : 'nothing'))
    render(<Notified />)
    fireEvent.click(await button('Notify me on this device'))
    await screen.findByText(/Not sent: no answer from the server/)
    await waitFor(() => expect(manager.present).toBeNull())
    expect(screen.getByText('Off, on this device.')).toBeTruthy()
  })

  test('for another server’s key end', async () => {
    server()
    await manager.subscribe({ applicationServerKey: `BA${KEY.slice(2)}` })
    render(<Notified />)
    await screen.findByText('Off, on this device.')
    expect(manager.present).toBeNull()
  })

  test('go on with the next sign-in, as a new password has ended them', async () => {
    const vale = { id: 'v1', name: 'Dr Vale', username: 'vale' }
    const sent = serve(({ path }) =>
      path === 'session' ? { body: { person: vale, memberships: [] } } : { body: { key: KEY } },
    )
    await manager.subscribe({ applicationServerKey: KEY })
    await signIn('vale', 'a new one')
    await until(() => expect(sent.at(-1)).toMatchObject({ method: 'PUT', path: 'push-subscription' }))
  })

  test('stop without a connection too', async () => {
    serve(() => 'nothing')
    await manager.subscribe({ applicationServerKey: KEY })
    expect(await stopPush()).toBe('off')
    expect(manager.present).toBeNull()
  })
})

describe('a notice', () => {
  const message = { case_id: 'c1', alias: 'Bench 1', tooth: '26', canal: 'MB2', what: 'asked', hold_point: 'length' }

  test('says tooth, canal and alias, and leads to where the sign-off is given', () => {
    const notice = noticeOf(message)
    expect(notice).toMatchObject({ title: '26 MB2: your sign-off is asked for', body: 'Bench 1, length' })
    expect(notice).toMatchObject({ to: '/cases/c1/sign-off/MB2', urgent: false })
    expect(noticeOf({ ...message, what: 'hold_point' }).title).toBe('26 MB2 has come to a hold point')
  })

  test('of an emergency leads to the chair and stays until it is seen', () => {
    const notice = noticeOf({ ...message, canal: '', hold_point: '', what: 'emergency' })
    expect(notice).toMatchObject({ title: 'Emergency: tooth 26', body: 'Bench 1', to: '/cases/c1/chair', urgent: true })
  })

  test('of an emergency says of what, and whoever was told hears that it was something else or not so', () => {
    const news = { ...message, canal: '', hold_point: '', happened: 'collapse', by: 'Priya' }
    expect(noticeOf({ ...news, what: 'emergency' }).body).toBe('The patient collapses, Bench 1')
    const corrected = noticeOf({ ...news, what: 'corrected' })
    expect(corrected).toMatchObject({ title: 'Tooth 26, emergency corrected by Priya', to: '/cases/c1/chair' })
    const notSo = noticeOf({ ...news, what: 'not_so', happened: '' })
    expect(notSo).toMatchObject({ title: 'Tooth 26: it was not so, says Priya', body: 'Bench 1', urgent: true })
    // It takes the place of the first one.
    expect(notSo.tag).toBe(noticeOf({ ...news, what: 'emergency' }).tag)
  })

  test.each([undefined, null, 'text', {}, { what: 'something new' }])(
    'of %o still says that something waits',
    (news) => {
      expect(noticeOf(news)).toMatchObject({ title: 'Something waits for you', to: '/worklist' })
    },
  )

  test('never leads out of the app', () => {
    expect(noticeOf({ ...message, case_id: '//elsewhere.example/' }).to).toBe(
      '/cases/%2F%2Felsewhere.example%2F/sign-off/MB2',
    )
  })
})
