import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { ImageShown } from '@/api/shapes'
import { PutRight, PutRightSays } from '@/panels/images/put-right'
import type { Chair } from '@/store/chair/chair'
import { askedAgain, imageOfStep, imagesSince, imagesTaken, restedOnGone } from '@/store/chair/image-of-step'
import { wantedImages } from '@/store/chair/wanted-images'
import type { CourseEvent, Kind } from '@/walk/course-event'
import { signedIn } from './people'
import { eventOf } from './sample-events'
import { serve } from './server'

const AT = '2026-03-05T12:00:00Z'

const image = (more: Partial<ImageShown> = {}) =>
  ({ id: 'i', canal: 'MB', purpose: 'length', device_time: AT, struck: false, put_right: [], ...more }) as ImageShown

function served() {
  const canals = ['MB', 'DB', 'P'].map((name) => ({ id: name, name }))
  return serve(({ method, path }) =>
    method === 'POST'
      ? { body: { id: 'i', state: 'stored' } }
      : { body: path.endsWith('k1') ? { id: 'k1', revision: 1, canals } : { images: [], events: [] } },
  )
}

const touch = (name: string) => fireEvent.click(screen.getByRole('button', { name }))

describe('an image in the wrong canal', () => {
  beforeEach(() => signedIn('Ines'))

  test('is put where it belongs in two touches; where it is now is not offered', async () => {
    const sent = served()
    render(<PutRight caseId="k1" image={image()} />)
    touch('Wrong canal?')
    await screen.findByRole('button', { name: 'DB' })
    expect(screen.queryByRole('button', { name: 'MB' })).toBeNull()
    expect(sent.filter(({ method }) => method === 'POST')).toEqual([])
    touch('DB')
    await waitFor(() =>
      expect(sent.find(({ method }) => method === 'POST')).toMatchObject({
        path: 'cases/k1/images/i/move',
        body: { canal: 'DB' },
      }),
    )
  })

  test.each([
    ['Strike it: it is of another tooth or canal', 'wrong_canal'],
    ['Strike it: it does not show what it should', 'not_so'],
  ])('%s', async (says, why) => {
    const sent = served()
    render(<PutRight caseId="k1" image={image()} />)
    touch('Wrong canal?')
    touch(says)
    await waitFor(() =>
      expect(sent.find(({ method }) => method === 'POST')).toMatchObject({
        path: 'cases/k1/images/i/strike',
        body: { why },
      }),
    )
  })

  test('says who put it where, and who struck it and why', () => {
    const by = { id: 'v', name: 'Dr Vale' }
    const put_right = [
      { at: AT, by, why: 'wrong_canal', canal: 'MB', struck: false, moved_to: '' },
      { at: '2026-03-05T12:01:00Z', by, why: 'not_so', canal: '', struck: true, moved_to: '' },
    ] as const
    const { container } = render(<PutRightSays image={image({ struck: true, put_right: [...put_right] })} />)
    expect(container.textContent).toContain('Put from MB to the whole tooth. Dr Vale')
    expect(container.textContent).toContain('Struck, counts for nothing: it does not show what it should. Dr Vale')
  })

  test('once struck it is struck', () => {
    const { container } = render(<PutRight caseId="k1" image={image({ struck: true })} />)
    expect(container.textContent).toBe('')
  })

  test('a coordinator puts nothing right', async () => {
    await signedIn('Rosa', 'coordinator')
    const { container } = render(<PutRight caseId="k1" image={image()} />)
    expect(container.textContent).toBe('')
  })
})

describe('at the chair', () => {
  let n = 0
  const event = (kind: Kind, canal: string, payload: object = {}): CourseEvent => {
    n += 1
    return eventOf({ id: `e${n}`, kind, canal, payload })
  }
  const taken = (id: string, canal = 'MB') => event('image', canal, { image_id: id })
  const struck = (id: string) => event('struck', 'MB', { what: 'image', struck: id, why: 'not_so' })
  const moved = (id: string, from: string, moved_to: string) =>
    event('struck', from, { what: 'image', struck: id, why: 'wrong_canal', moved_to })
  const at = (...events: CourseEvent[]) => of(events, () => true)
  const of = (events: CourseEvent[], signOffCounts: () => boolean) =>
    ({ events, course: { undone: new Set(), outOfCourse: {}, signOffCounts } }) as unknown as Pick<
      Chair,
      'events' | 'course'
    >

  test('an image step is not answered by an image that was struck or moved away', () => {
    expect(imageOfStep(at(taken('i')), 'MB')).toBe('i')
    expect(imageOfStep(at(taken('i'), struck('i')), 'MB')).toBeUndefined()
    expect(imageOfStep(at(taken('i'), moved('i', 'MB', 'DB')), 'MB')).toBeUndefined()
    expect(imageOfStep(at(taken('h'), taken('i'), struck('i')), 'MB')).toBe('h')
  })

  test('it is shown in the canal it was put to, and stays shown where it was', () => {
    const chair = at(taken('i'), moved('i', 'MB', 'DB'))
    expect(imagesTaken(chair, 'DB')).toEqual(['i'])
    expect(imagesTaken(chair, 'MB')).toEqual(['i'])
    expect(imagesSince(at(taken('i'), event('sign_off', 'MB'), taken('j')), 'MB')).toEqual(['j'])
  })

  test('an image that a supervisor asked for is still wanted, and one put to the canal answers', () => {
    const wanted = event('wanted', 'MB', { what: 'image' })
    expect(wantedImages(at(wanted, taken('i')))).toEqual([])
    expect(wantedImages(at(wanted, taken('i'), struck('i')))).toEqual([wanted])
    expect(wantedImages(at(wanted, taken('i', 'DB'), moved('i', 'DB', 'MB')))).toEqual([])
  })

  test('a sign-off that is asked for again is none: what was taken before it is looked at once more', () => {
    const events = [taken('i'), event('sign_off', 'MB', { exit: 'approved' }), struck('i'), taken('j')]
    expect([imagesSince(at(...events), 'MB'), askedAgain(at(...events), 'MB')]).toEqual([['j'], false])
    const again = of(events, () => false)
    expect([imagesSince(again, 'MB'), askedAgain(again, 'MB')]).toEqual([['i', 'j'], true])
  })

  test('a word says that an image it rested on was put right since', () => {
    const word = event('sign_off', 'MB', { exit: 'approved' })
    expect(restedOnGone(at(taken('i'), word), 'MB')).toBe(false)
    expect(restedOnGone(at(taken('i'), word, struck('i')), 'MB')).toBe(true)
    expect(restedOnGone(at(word, taken('i'), struck('i')), 'MB')).toBe(false)
    const second = event('sign_off', 'MB', { exit: 'approved' })
    expect(restedOnGone(at(taken('i'), word, taken('j'), second, struck('i')), 'MB')).toBe(false)
  })
})
