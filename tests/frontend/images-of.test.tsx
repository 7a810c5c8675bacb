import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { ImageShown, MarkingShown } from '@/api/shapes'
import { ImagesOf } from '@/screens/images/images-of'
import { imagesTaken } from '@/screens/images/step-images'
import { signedIn } from './people'
import { serve } from './server'

const CASE = 'case-1'
const ROOM = { left_bytes: 1e9, most_bytes: 2e9, most_bytes_each: 32e6 }

function image(id: string, more: Partial<ImageShown> = {}): ImageShown {
  const taken = { canal: 'MB', shows: 'length', device_time: '2026-03-05T14:20:00Z', state: 'stored' }
  return { id, ...taken, burnt_in_text: 'denied', ...more } as ImageShown
}

function marking(number: number, corrects: string | null): MarkingShown {
  const points = [
    { x_px: 4, y_px: 1 },
    { x_px: 4, y_px: 5 + number },
  ]
  const measured = { canal: 'MB', length_mm: null, bend: null, tip_short_mm: null }
  return {
    ...{ id: `marking ${number}`, number, corrects, made_by: { id: '1', name: 'Ada' }, at: '2026-03-05T14:20:00Z' },
    ...{ readings: [], marks: { lines: [{ canal: 'MB', points, orifice: null }] } },
    measured: { scale: { row_per_column: 1, says: 'No scale.' }, lines: [measured] },
  } as unknown as MarkingShown
}

/** Images of a case; whichever is asked for was marked by one and put right by another. */
function served(...images: ImageShown[]): void {
  const markings = [marking(1, null), marking(2, 'marking 1')]
  serve(({ path }) => ({ body: path.endsWith('/markings') ? { markings } : { room: ROOM, images } }))
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
    HTMLDialogElement.prototype.showModal = () => undefined
    served(image('one', { burnt_in_text: 'stated' }), image('not meant'))
    render(<ImagesOf caseId={CASE} ids={['one']} />)
    const tile = await screen.findByRole('button', { name: /^Open MB: length/ })
    expect(tile.querySelector('img')?.getAttribute('src')).toBe(`/api/v1/cases/${CASE}/images/one/thumbnail`)
    fireEvent.click(tile)
    expect(screen.getByText(/words are part of the picture/)).toBeDefined()
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

  test('are those of the canal that were not taken back, each once', () => {
    const event = (id: string, canal: string, image_id: string, kind = 'image') => ({
      id,
      kind,
      canal,
      body: { image_id },
    })
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
