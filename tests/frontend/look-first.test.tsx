import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { LooksFirst } from '@/panels/images/look-first'
import { bytesOf, closeImages, waitingOf } from '@/store/images/image-store'
import { sendImages, waitingImages } from '@/store/images/images'
import { blackOut, lookElsewhere, lookNow, nobodyNamed } from '@/store/images/look-first'
import { takeImage } from '@/store/images/take'
import { personId } from '@/store/session/session'
import { signedIn } from './people'
import { until } from './until'

const TAKEN = new Uint8Array([1, 2, 3, 4])
const BLACK = new Uint8Array([9, 9])
const sent: { method: string; path: string; bytes: number[] }[] = []

function server() {
  sent.length = 0
  let stored = false
  const json = (body: unknown, status = 200) =>
    new Response(JSON.stringify(body), { status, headers: { 'Content-Type': 'application/json' } })
  vi.stubGlobal('fetch', async (request: Request) => {
    const path = new URL(request.url).pathname
    const bytes = request.method === 'PATCH' ? [...new Uint8Array(await request.arrayBuffer())] : []
    if (request.method !== 'GET') sent.push({ method: request.method, path, bytes })
    if (path.endsWith('/images')) return json({ quota: {}, images: [] })
    if (request.method === 'GET' && !stored)
      return new Response('{"type":"/api/v1/problems/not-found"}', {
        status: 404,
        headers: { 'Content-Type': 'application/problem+json' },
      })
    stored = true
    return json({ id: 'x', state: 'stored', received_bytes: 4, name_check: 'open' })
  })
}

/** A canvas that says what was drawn on it. */
function canvas() {
  const drawn: string[] = []
  vi.stubGlobal('createImageBitmap', async () => ({ width: 8000, height: 6000, close: () => {} }))
  const on = new Proxy({} as Record<string, unknown>, {
    get: (own, what: string) => own[what] ?? ((...args: unknown[]) => drawn.push(`${what} ${args.slice(-2)}`)),
    set: (own, what: string, value) => {
      own[what] = value
      drawn.push(`${what} ${value}`)
      return true
    },
  })
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue(on as never)
  vi.spyOn(HTMLCanvasElement.prototype, 'toBlob').mockImplementation(function (this: HTMLCanvasElement, done, type) {
    drawn.push(`${this.width} by ${this.height}`)
    done(new Blob([BLACK], { type: type as string }))
  })
  return drawn
}

const taken = (type = 'image/jpeg') => takeImage('case-1', 'MB', 'length', new Blob([TAKEN], { type }))
const patches = () => sent.filter(({ method }) => method === 'PATCH').map(({ bytes }) => bytes)

beforeEach(async () => {
  await closeImages()
  signedIn(`ada ${Math.random()}`)
  lookNow()
  server()
})
afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

test('a picture is not sent before somebody has looked, then it is and the server need not ask', async () => {
  const id = await taken()
  await sendImages()
  expect(patches()).toEqual([])
  expect((await bytesOf(id))?.byteLength).toBe(4)
  await nobodyNamed(id)
  await until(async () => expect(await waitingOf(personId())).toEqual([]))
  expect(patches()).toEqual([[...TAKEN]])
  expect(sent.map(({ method, path }) => `${method} ${path}`)).toContain(
    `POST /api/v1/cases/case-1/images/${id}/name-check`,
  )
})

test('a kind that no browser draws goes at once, and the server asks', async () => {
  await taken('image/heic')
  await until(async () => expect(await waitingOf(personId())).toEqual([]))
  expect(patches()).toEqual([[...TAKEN]])
  expect(sent.filter(({ method }) => method === 'POST')).toEqual([])
})

test('a HEIC that this browser draws is kept as JPEG, and looked at before it is sent', async () => {
  const drawn = canvas()
  const id = await taken('image/heic')
  const [kept] = await waitingOf(personId())
  expect(kept).toMatchObject({ id, type: 'image/jpeg', look: 'open', length: 2 })
  expect(new Uint8Array((await bytesOf(id)) as ArrayBuffer)).toEqual(BLACK)
  expect(drawn.some((each) => each.startsWith('lineTo'))).toBe(false)
  await sendImages()
  expect(patches()).toEqual([])
})

test('what cannot be shown here is sent to be looked at elsewhere', async () => {
  const id = await taken()
  await lookElsewhere(id)
  await until(async () => expect(await waitingOf(personId())).toEqual([]))
  expect(sent.filter(({ method }) => method === 'POST')).toEqual([])
})

test('what was blacked out takes the place of what was taken, under its id, and is looked at once more', async () => {
  const drawn = canvas()
  const id = await taken()
  const [before] = await waitingOf(personId())
  await blackOut(id, 'image/jpeg', [{ points: [{ x: 10, y: 20 }], width: 44 }])
  const [after] = await waitingOf(personId())
  expect(after).toMatchObject({ id, look: 'open', length: 2, type: 'image/jpeg', device_time: before?.device_time })
  expect(after?.sha256).not.toBe(before?.sha256)
  expect(new Uint8Array((await bytesOf(id)) as ArrayBuffer)).toEqual(BLACK)
  // 16 of 48 million pixels: 8000 and 6000 times the root of a third, by hand.
  expect(drawn).toEqual(
    expect.arrayContaining(['lineWidth 44', 'lineTo 10,20', 'lineTo 10.01,20', 'stroke ', '4618 by 3464']),
  )
  expect(drawn.findIndex((each) => each.startsWith('drawImage'))).toBeLessThan(drawn.indexOf('stroke '))
  await sendImages()
  expect(patches()).toEqual([])
  await nobodyNamed(id)
  await until(async () => expect(await waitingOf(personId())).toEqual([]))
  expect(patches()).toEqual([[...BLACK]])
})

test('the question comes up for each picture of the case, and put off comes up no more by itself', async () => {
  HTMLDialogElement.prototype.showModal ??= () => {}
  await taken()
  await until(() => expect(waitingImages().value.length).toBe(1))
  const { container } = render(<LooksFirst caseId="case-1" />)
  expect(container.querySelector('dialog')).not.toBeNull()
  fireEvent(container.querySelector('dialog') as HTMLDialogElement, new Event('close'))
  await waitFor(() => expect(container.querySelector('dialog')).toBeNull())
  lookNow()
  await waitFor(() => expect(container.querySelector('dialog')).not.toBeNull())
  cleanup()
  render(<LooksFirst caseId="another" />)
  expect(screen.queryByRole('dialog', { hidden: true })).toBeNull()
})
