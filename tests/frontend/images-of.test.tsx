import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { ImageShown } from '@/api/shapes'
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

function served(...images: ImageShown[]): void {
  serve(() => ({ body: { room: ROOM, images } }))
}

beforeEach(() => signedIn(`ada ${Math.random()}`))

describe('images of a hold point', () => {
  test('that the server has are shown small, and large when touched', async () => {
    HTMLDialogElement.prototype.showModal = () => undefined
    served(image('one', { burnt_in_text: 'stated' }), image('not meant'))
    render(<ImagesOf caseId={CASE} ids={['one']} />)
    const tile = await screen.findByRole('button', { name: /^Open MB: length/ })
    expect(tile.querySelector('img')?.getAttribute('src')).toBe(`/api/v1/cases/${CASE}/images/one/thumbnail`)
    fireEvent.click(tile)
    expect(document.querySelector('.viewer img')?.getAttribute('src')).toBe(`/api/v1/cases/${CASE}/images/one/content`)
    expect(screen.getByText(/words are part of the picture/)).toBeDefined()
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
