import { beforeEach, describe, expect, test, vi } from 'vitest'
import { bytesOf, closeImages, waitingOf } from '@/store/images/image-store'
import { sendImageAgain, sendImages, throwAway, thrownImages, waitingImages } from '@/store/images/images'
import { nobodyNamed } from '@/store/images/look-first'
import { removeImage } from '@/store/images/put-right'
import { takeImage } from '@/store/images/take'
import { personId } from '@/store/session/session'
import { signedIn } from './people'
import { until } from './until'

const CASE = 'case-1'
const EMPTY = { quota: { left_bytes: 1, most_bytes: 1, most_bytes_each: 1 }, images: [] }

interface Upload {
  parts: Uint8Array[]
  length: number
  digest: string
}

/** A server that takes images in parts as the real one does; `line` is asked before and after each request. */
function receiver(line: (when: 'before' | 'after', method: string) => boolean = () => true) {
  const uploads = new Map<string, Upload>()
  const removed = new Map<string, string>()
  const refuse: { says?: string } = {}
  const have = ({ parts }: Upload) => parts.reduce((sum, part) => sum + part.length, 0)
  const shown = (id: string, upload: Upload) => ({
    id,
    received_bytes: have(upload),
    state: have(upload) < upload.length ? 'awaited' : 'stored',
  })
  const answer = (status: number, body: unknown) => {
    const type = status < 400 ? 'application/json' : 'application/problem+json'
    return new Response(JSON.stringify(body), { status, headers: { 'Content-Type': type } })
  }
  const remove = async (request: Request, id: string) => {
    if (!uploads.has(id)) return answer(404, { type: '/api/v1/problems/not-found' })
    removed.set(id, ((await request.json()) as { reason: string }).reason)
    uploads.set(id, { parts: [], length: 0, digest: '' })
    return answer(200, { id, state: 'removed', received_bytes: 0 })
  }
  const take = async (request: Request, id: string) => {
    if (removed.has(id)) return answer(410, { type: '/api/v1/problems/image-removed', detail: 'removed' })
    if (refuse.says) return answer(422, { type: '/api/v1/problems/image-refused', detail: refuse.says })
    const header = (name: string) => request.headers.get(name) ?? ''
    const upload = uploads.get(id) ?? {
      parts: [],
      length: Number(header('Upload-Length')),
      digest: header('Repr-Digest'),
    }
    if (Number(header('Upload-Offset')) !== have(upload))
      return answer(409, { type: '/api/v1/problems/offset-mismatch' })
    upload.parts.push(new Uint8Array(await request.arrayBuffer()))
    uploads.set(id, upload)
    return answer(200, shown(id, upload))
  }
  vi.stubGlobal('fetch', async (request: Request) => {
    if (!line('before', request.method)) throw new TypeError('Failed to fetch')
    const id = /images\/([^/?]+)/.exec(request.url)?.[1]
    const upload = id === undefined ? undefined : uploads.get(id)
    const image = await (id === undefined
      ? answer(200, EMPTY)
      : request.method === 'POST'
        ? remove(request, id)
        : request.method === 'PATCH'
          ? take(request, id)
          : upload
            ? answer(200, shown(id, upload))
            : answer(404, { type: '/api/v1/problems/not-found' }))
    if (!line('after', request.method)) throw new TypeError('Failed to fetch')
    return image
  })
  return { uploads, removed, refuse }
}

const photo = (bytes: number) => new Blob([new Uint8Array(bytes).map((_, i) => i % 251)], { type: 'image/jpeg' })
const left = async () => (await waitingOf(personId())).map((image) => image.id)
const allSent = () => until(async () => expect(await left()).toEqual([]))

async function whole({ parts }: Upload): Promise<string> {
  const bytes = await new Blob(parts as BlobPart[]).arrayBuffer()
  const digest = await crypto.subtle.digest('SHA-256', bytes)
  return `sha-256=:${Buffer.from(digest).toString('base64')}:`
}

/** Taken, and looked at: nobody is named. */
async function take(...image: Parameters<typeof takeImage>): Promise<string> {
  const id = await takeImage(...image)
  await nobodyNamed(id)
  return id
}

beforeEach(async () => {
  await closeImages()
  signedIn(`ada ${Math.random()}`)
})

describe('images on the phone', () => {
  test('go to the server in parts that make up the whole, and then leave the phone', async () => {
    const { uploads } = receiver()
    const id = await take(CASE, 'MB', 'length', photo(1_300_000))
    await allSent()
    const upload = uploads.get(id)
    expect(upload?.parts.map((part) => part.length)).toEqual([512_000, 512_000, 276_000])
    expect(upload && (await whole(upload))).toBe(upload?.digest)
    expect(await bytesOf(id)).toBeUndefined()
  })

  test('wait while there is no connection, and are seen meanwhile', async () => {
    let online = false
    const { uploads } = receiver(() => online)
    const id = await take(CASE, 'MB', 'length', photo(1000))
    await sendImages()
    expect(await left()).toEqual([id])
    await until(() => expect(waitingImages().value.map((image) => image.id)).toEqual([id]))
    expect((await bytesOf(id))?.byteLength).toBe(1000)
    online = true
    await sendImages()
    await allSent()
    expect([...uploads.keys()]).toEqual([id])
  })

  test('go on where the line broke, also where only an answer was lost', async () => {
    let parts = 0
    const { uploads } = receiver((when, method) => !(method === 'PATCH' && when === 'after' && ++parts === 2))
    const id = await take(CASE, '', 'other', photo(1_300_000))
    await until(() => expect(parts).toBe(2))
    await until(async () => {
      await sendImages()
      expect(await left()).toEqual([])
    })
    const upload = uploads.get(id)
    expect(upload?.parts.map((part) => part.length)).toEqual([512_000, 512_000, 276_000])
    expect(upload && (await whole(upload))).toBe(upload?.digest)
  })

  test('that the server will not keep stay with its sentence, do not hold up others, and can be thrown away', async () => {
    const { uploads, refuse } = receiver()
    refuse.says = 'This is no image.'
    const bad = await take(CASE, '', 'other', photo(10))
    await until(() => expect(waitingImages().value[0]?.refused).toBe('This is no image.'))
    delete refuse.says
    const good = await take(CASE, '', 'other', photo(20))
    await until(async () => expect(await left()).toEqual([bad]))
    expect([...uploads.keys()]).toEqual([good])
    await sendImageAgain(bad)
    await allSent()
    expect([...uploads.keys()]).toEqual([good, bad])
    refuse.says = 'This is no image.'
    const worse = await take(CASE, '', 'other', photo(30))
    await until(() => expect(waitingImages().value[0]?.refused).toBeDefined())
    await throwAway(worse, 'not_usable')
    await allSent()
    expect(await bytesOf(worse)).toBeUndefined()
  })

  test('thrown away with no connection leave no bytes at once; the server learns of it later', async () => {
    let online = false
    const { uploads, removed } = receiver(() => online)
    const id = await take(CASE, 'MB', 'length', photo(1000))
    await until(() => expect(waitingImages().value.map((image) => image.id)).toEqual([id]))
    await throwAway(id, 'names_somebody')
    expect(await bytesOf(id)).toBeUndefined()
    expect(waitingImages().value).toEqual([])
    expect(thrownImages().value.map((image) => image.thrown)).toEqual(['names_somebody'])
    online = true
    await until(async () => {
      await sendImages()
      expect(await left()).toEqual([])
    })
    expect([...removed]).toEqual([[id, 'names_somebody']])
    expect(uploads.get(id)?.parts).toEqual([])
  })

  test('thrown away while they are being sent are removed from the server all the same', async () => {
    let go = () => {}
    const hold = new Promise<void>((resolve) => {
      go = resolve
    })
    const { removed } = receiver()
    const real = fetch
    vi.stubGlobal('fetch', async (request: Request) => {
      if (request.method === 'PATCH') await hold
      return real(request)
    })
    const id = await take(CASE, 'MB', 'length', photo(1000))
    await throwAway(id, 'names_somebody')
    go()
    await allSent()
    expect([...removed]).toEqual([[id, 'names_somebody']])
    expect(await bytesOf(id)).toBeUndefined()
  })

  test('that somebody removed on the server leave the phone, and are not offered again', async () => {
    const { removed } = receiver()
    let tries = 0
    let lost = true
    const real = fetch
    // The answer to the last part is lost; meanwhile a supervisor removes the image.
    vi.stubGlobal('fetch', async (request: Request) => {
      if (request.method === 'PATCH') tries += 1
      const answer = await real(request)
      if (request.method !== 'PATCH' || !lost) return answer
      lost = false
      removed.set(/images\/([^/?]+)/.exec(request.url)?.[1] ?? '', 'names_somebody')
      throw new TypeError('Failed to fetch')
    })
    const id = await take(CASE, 'MB', 'length', photo(1000))
    await until(() => expect(removed.has(id)).toBe(true))
    await until(async () => {
      await sendImages()
      expect(await left()).toEqual([])
    })
    expect(await bytesOf(id)).toBeUndefined()
    expect(tries).toBe(2)
  })

  test('that are removed on the server need the connection, and leave this phone too', async () => {
    let online = true
    const { removed } = receiver(() => online)
    const id = await take(CASE, 'MB', 'length', photo(1000))
    await allSent()
    online = false
    await expect(removeImage(CASE, id, 'not_usable')).rejects.toThrow('No answer')
    expect(removed.size).toBe(0)
    online = true
    await removeImage(CASE, id, 'not_usable')
    expect([...removed]).toEqual([[id, 'not_usable']])
  })

  test('of one person are neither seen nor sent by another on the same phone', async () => {
    let online = false
    const { uploads } = receiver(() => online)
    await take(CASE, '', 'other', photo(10))
    signedIn('somebody else')
    online = true
    await sendImages()
    expect(await left()).toEqual([])
    expect(uploads.size).toBe(0)
  })
})
