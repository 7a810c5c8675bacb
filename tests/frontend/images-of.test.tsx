import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { ImageShown, MarkingShown } from '@/api/shapes'
import { ImagesOf } from '@/panels/images/images-of'
import { TakeImage } from '@/panels/images/take-image'
import { imagesTaken } from '@/store/chair/image-of-step'
import { takeImage } from '@/store/images/take'
import type { Kind } from '@/walk/course-event'
import { words } from '@/words/en'
import { signedIn } from './people'
import { eventOf } from './sample-events'
import { serve } from './server'

const CASE = 'case-1'
const QUOTA = { left_bytes: 1e9, most_bytes: 2e9, most_bytes_each: 32e6 }

function image(id: string, more: Partial<ImageShown> = {}): ImageShown {
  const taken = { canal: 'MB', purpose: 'length', device_time: '2026-03-05T14:20:00Z', state: 'stored' }
  return { id, ...taken, burnt_in_text: 'denied', name_check: 'not_asked', ...more } as ImageShown
}

function marking(number: number, corrects: string | null): MarkingShown {
  const points = [
    { x_px: 4, y_px: 1 },
    { x_px: 4, y_px: 5 + number },
  ]
  const measured = { canal: 'MB', length_mm: null, bend: null, tip_short_mm: null }
  return {
    ...{
      id: `marking ${number}`,
      number,
      corrects_id: corrects,
      made_by: { id: '1', name: 'Ada' },
      at: '2026-03-05T14:20:00Z',
    },
    ...{ readings: [], marks: { lines: [{ canal: 'MB', points, orifice: null }] } },
    measured: { scale: { row_per_column: 1, says: 'No scale.' }, lines: [measured] },
  } as unknown as MarkingShown
}

/** Images of a case; whichever is asked for was marked by one and put right by another. */
function served(...images: ImageShown[]): void {
  const markings = [marking(1, null), marking(2, 'marking 1')]
  serve(({ path }) => ({
    body: path.endsWith('/markings')
      ? { markings }
      : { quota: QUOTA, marking: { interval_share: 0.95, reach: 1.96 }, images },
  }))
}

/** Every image is as large as this and there at once: there is no decoder here. */
class Decoded {
  naturalWidth = 8
  naturalHeight = 12
  onload?: () => void
  set src(_: string) {
    queueMicrotask(() => this.onload?.())
  }
}

beforeEach(() => {
  vi.stubGlobal('Image', Decoded)
  return signedIn(`ada ${Math.random()}`)
})

describe('images of a hold point', () => {
  test('that the server has are shown small, and large when touched', async () => {
    vi.spyOn(HTMLDialogElement.prototype, 'showModal').mockReturnValue()
    served(image('one'), image('not meant'))
    render(<ImagesOf caseId={CASE} ids={['one']} />)
    const tile = await screen.findByRole('button', { name: /^Open MB: length/ })
    expect(tile.querySelector('img')?.getAttribute('src')).toBe(`/api/v1/cases/${CASE}/images/one/thumbnail`)
    fireEvent.click(tile)
    await waitFor(() =>
      expect(document.querySelector('.viewer img')?.getAttribute('src')).toBe(
        `/api/v1/cases/${CASE}/images/one/content`,
      ),
    )
    // The one who corrected and the one who was corrected: the last line, and the one before it, broken.
    await waitFor(() => expect(document.querySelectorAll('.viewer .marked-line')).toHaveLength(2))
    expect(document.querySelectorAll('.viewer .marked-line[data-broken]')).toHaveLength(1)
    fireEvent.click(screen.getByLabelText('Show marks'))
    expect(document.querySelectorAll('.viewer .marked-line')).toHaveLength(0)
  })

  test('that the server has not are said to be where they are', async () => {
    served(image('half', { state: 'awaited' }), image('bad', { state: 'refused' }))
    render(<ImagesOf caseId={CASE} ids={['gone', 'half', 'bad']} />)
    expect(await screen.findByText('Image on its way')).toBeDefined()
    expect(screen.getByText('Image could not be kept')).toBeDefined()
    expect(screen.getByText('Image still on the phone')).toBeDefined()
  })

  test('of the whole case come of themselves, also one that this phone has never heard of', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'] })
    const images: ImageShown[] = []
    serve(() => ({ body: { quota: QUOTA, marking: { interval_share: 0.95, reach: 1.96 }, images } }))
    render(<ImagesOf caseId={CASE} />)
    await vi.advanceTimersByTimeAsync(100)
    images.push(image('of another'))
    await vi.advanceTimersByTimeAsync(10_500)
    vi.useRealTimers()
    expect(await screen.findByRole('button', { name: /^Open MB: length/ })).toBeDefined()
  })

  test('that were removed say why and by whom', async () => {
    const removal = { removed_for: 'names_somebody', removed_by: { id: 'v', name: 'Vale' } } as const
    served(image('one', { state: 'removed', ...removal, removed_at: '2026-03-05T15:00:00Z' }))
    render(<ImagesOf caseId={CASE} ids={['one']} />)
    expect(await screen.findByText(/Removed\. A name or number is written in it\. Vale, /)).toBeDefined()
    expect(screen.queryByRole('button', { name: /^Open/ })).toBeNull()
  })

  test('are those of the canal that were not taken back, each once', () => {
    const event = (id: string, canal: string, image_id: string, kind: Kind = 'image') =>
      eventOf({ id, kind, canal, payload: { image_id } })
    const events = [
      event('1', 'MB', 'a'),
      event('2', 'ML', 'b'),
      event('3', 'MB', 'c'),
      event('4', 'MB', 'd'),
      event('5', 'MB', 'a'),
      event('6', 'MB', 'e', 'note'),
    ]
    const chair = { events, course: { undone: new Set(['3']) } } as unknown as Parameters<typeof imagesTaken>[0]
    expect(imagesTaken(chair, 'MB')).toEqual(['a', 'd'])
  })
})

const OPEN = { name_check: 'open', burnt_in_text: 'stated' } as const

/** A server with one image; remembers what it was asked. */
function keeper(more: Partial<ImageShown>, line = { up: true }) {
  const asked: [string, unknown][] = []
  serve(({ method, path, body }) => {
    if (!line.up) return 'nothing'
    if (path.endsWith('/markings')) return { body: { scale: {}, markings: [] } }
    if (method === 'POST') {
      asked.push([path, body])
      more = path.endsWith('/remove') ? { state: 'removed' } : { ...more, name_check: 'nobody_named' }
      return { body: image('one', more) }
    }
    return { body: { quota: QUOTA, marking: { interval_share: 0.95, reach: 1.96 }, images: [image('one', more)] } }
  })
  return asked
}

async function opened(): Promise<void> {
  vi.spyOn(HTMLDialogElement.prototype, 'showModal').mockReturnValue()
  render(<ImagesOf caseId={CASE} />)
  fireEvent.click(await screen.findByRole('button', { name: /^Open MB: length/ }))
}

const touch = (name: string) => fireEvent.click(screen.getByText(name))
/** A reason counts only a moment after it has come under the finger. */
async function touchReason(name: string): Promise<void> {
  await waitFor(() => expect(screen.getByText<HTMLButtonElement>(name).disabled).toBe(false))
  touch(name)
}

const there = (name: string) => screen.queryByText(name) !== null

describe('a name in an image', () => {
  test('is looked for by a person, and the flag goes with the answer', async () => {
    const asked = keeper(OPEN)
    await opened()
    expect(there('Look for a name')).toBe(true)
    expect(there('The file says that words are part of the picture.')).toBe(true)
    expect(there('Is a name or a number of a person written in the picture?')).toBe(true)
    touch('No')
    await waitFor(() => expect(there('Look for a name')).toBe(false))
    expect(there('Is a name or a number of a person written in the picture?')).toBe(false)
    expect(asked).toEqual([[`cases/${CASE}/images/one/name-check`, undefined]])
  })

  test('that is there leads to the removal', async () => {
    const asked = keeper({ ...OPEN, burnt_in_text: 'unknown' })
    await opened()
    expect(there('The file does not say whether words are part of the picture.')).toBe(true)
    touch('Yes')
    expect(asked).toEqual([])
    await touchReason('A name or number is written in it')
    await waitFor(() => expect(screen.queryByRole('button', { name: /^Open/ })).toBeNull())
    expect(asked).toEqual([[`cases/${CASE}/images/one/remove`, { reason: 'names_somebody' }]])
  })

  test('is shown to the coordinator, who changes nothing', async () => {
    keeper(OPEN)
    signedIn(`ada ${Math.random()}`, 'coordinator')
    await opened()
    expect(there('The file says that words are part of the picture.')).toBe(true)
    expect(['No', 'Yes', 'Remove this image'].filter(there)).toEqual([])
  })
})

describe('removing an image', () => {
  test('is never one slip: a second touch at once does nothing, and there is a way back', async () => {
    const asked = keeper({})
    await opened()
    touch('Remove this image')
    for (const why of Object.values(words.images.remove.reasons)) touch(why)
    touch('Keep it')
    expect(there('Remove this image')).toBe(true)
    expect(asked).toEqual([])
  })

  test('with no connection says that nothing was changed', async () => {
    const line = { up: true }
    const asked = keeper({}, line)
    await opened()
    touch('Remove this image')
    line.up = false
    await touchReason('Nothing can be told from it')
    await waitFor(() =>
      expect(there('No answer from the server: nothing was changed. This needs the connection.')).toBe(true),
    )
    expect(there('Keep it')).toBe(true)
    expect(asked).toEqual([])
  })
})

describe('the quota of images', () => {
  const quotaLeft = (left_bytes: number) => serve(() => ({ body: { quota: { ...QUOTA, left_bytes }, images: [] } }))
  const camera = () => render(<TakeImage caseId={CASE} canal="MB" purpose="length" />)

  test('is said in passing where there is plenty', async () => {
    quotaLeft(100_000_000)
    camera()
    expect(await screen.findByText(/Room for about 25 more\./)).toBeDefined()
  })

  test('is a caution before it is used up', async () => {
    quotaLeft(99_000_000)
    camera()
    expect(
      await screen.findByText('The programme has room for about 24 more images. Tell the coordinator.'),
    ).toBeDefined()
    expect(screen.getByLabelText('Take a photo')).toBeDefined()
  })

  test('is not opened a camera for where it is used up', async () => {
    quotaLeft(3_999_999)
    camera()
    expect(await screen.findByText(/room for images is used up/)).toBeDefined()
    expect(screen.queryByLabelText('Take a photo')).toBeNull()
  })

  test('is less by what waits on this phone', async () => {
    serve(({ method }) =>
      method === 'GET' ? { body: { quota: { ...QUOTA, left_bytes: 8_000_000 }, images: [] } } : 'nothing',
    )
    await takeImage(CASE, 'MB', 'length', new Blob([new Uint8Array(4_000_001)]))
    camera()
    expect(await screen.findByText(/room for images is used up/)).toBeDefined()
  })
})
