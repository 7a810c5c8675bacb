import { act, createEvent, fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest'
import { WantedImages } from '@/screens/chair/image-answers'
import { LookingIn } from '@/screens/chair/looking-in'
import { TakenOver } from '@/screens/chair/take-over'
import { mayTell, partIn, works } from '@/store/chair/part'
import { wantedImages } from '@/store/chair/wanted-images'
import { signedIn } from './people'
import { chairAfter } from './sample-chair'
import type { Written } from './sample-events'
import { serve } from './server'

const STEP: Written = { canal: 'MB1', node: 'shape', payload: { exit: 'short', depth_um: 15_000 } }
const TAKEN: Written = { kind: 'take_over', actor: 'id of Dr Vale' }

/** The student's words: none of them belongs on the screen of somebody who does not work the tooth. */
const OF_THE_STUDENT = [
  /at its stop,/i,
  /stopped/i,
  /^done$/i,
  /image taken/i,
  /not sure/i,
  /passes freely/i,
  /does not pass/i,
  /the stop had moved/i,
  /the dam/i,
  /close for today/i,
  /open again/i,
  /irrigate/i,
  /ask for sign-off/i,
  /take a photo/i,
  /^problem$/i,
]

function looks(events: readonly Written[], setting: 'clinic' | 'extracted' = 'extracted') {
  const at = chairAfter(events, setting)
  Object.assign(at.chair, { version: { case_id: 'k1' } })
  render(<LookingIn chair={at.chair} canals={at.chair.plan.canals} />)
  return at
}

/** A touch of a button that has been on the screen for `shown_ms`. */
async function touch(name: string | RegExp, shown_ms = 1000) {
  const button = screen.getByRole('button', { name, hidden: true })
  const click = createEvent.click(button)
  Object.defineProperty(click, 'timeStamp', { value: performance.now() + shown_ms })
  await act(async () => {
    fireEvent(button, click)
  })
}

const buttons = () => screen.queryAllByRole('button').map((element) => element.textContent ?? '')

beforeEach(() => {
  serve(() => ({ status: 404, body: {} }))
})

describe('a supervisor who looks in', () => {
  beforeEach(() => signedIn('Dr Vale', 'supervisor'))

  test('is told in the third person where the work stands', () => {
    looks([STEP])
    expect(screen.getByText('The student is at irrigation in MB1')).toBeTruthy()
  })

  test.each([
    ['before anything', [], 'extracted'],
    ['in the middle', [STEP], 'extracted'],
    ['past the stop', [{ ...STEP, payload: { exit: 'reached', depth_um: 19_500, stop_um: 19_000 } }], 'extracted'],
    ['a length taken', [{ kind: 'reading', canal: 'MB1' }], 'extracted'],
    ['closed', [{ kind: 'close', payload: { access_sealed: true } }], 'clinic'],
    ['nothing said of dam and room', [], 'clinic'],
  ] as const)('is offered no answer of the student, not even one that cannot be touched: %s', (_, events, setting) => {
    looks(events as readonly Written[], setting)
    for (const says of OF_THE_STUDENT) expect(buttons().filter((name) => says.test(name))).toEqual([])
    const links = screen.queryAllByRole('link').map((link) => link.getAttribute('href'))
    expect(links.filter((to) => to?.includes('/chair/'))).toEqual([])
  })

  test('is offered to ask for an image, to stop the work and to take over', async () => {
    const { record } = looks([STEP])
    await touch('Ask for an image of MB1')
    expect(record).toHaveBeenLastCalledWith('MB1', '', { kind: 'wanted', what: 'image', note: '' })
    await touch('Stop the work')
    await touch('A perforation is suspected')
    expect(record.mock.lastCall?.[2]).toMatchObject({ kind: 'emergency', what: 'perforation_suspected' })
    await touch('Take over')
    expect(record).toHaveBeenCalledTimes(2)
    await touch('I take over')
    expect(record).toHaveBeenLastCalledWith('', '', { kind: 'take_over' })
  })

  test('answers nothing that was not on the screen for 400 ms; an emergency is never held up', async () => {
    // However long the machine takes from drawing to touching.
    const clock = vi.spyOn(performance, 'now').mockReturnValue(5000)
    onTestFinished(() => clock.mockRestore())
    const { record } = looks([STEP, { kind: 'pause', canal: 'MB1', payload: { what: 'sensitivity' } }])
    fireEvent.input(screen.getByLabelText('Reason'), { target: { value: 'Numb now.' } })
    await touch('Let it go on', 350)
    await touch('Ask for an image of MB1', 350)
    expect(record).not.toHaveBeenCalled()
    await touch('Stop the work', 0)
    await touch('A perforation is suspected', 0)
    expect(record.mock.calls.map((call) => call[2].kind)).toEqual(['emergency'])
  })

  test('looks at another canal without turning anybody’s hand', async () => {
    const { record } = looks([STEP])
    await touch(/^Other canals/)
    await touch(/^MB2/)
    expect(screen.getByRole('button', { name: 'Ask for an image of MB2' })).toBeTruthy()
    expect(record).not.toHaveBeenCalled()
  })

  test('lets a paused canal go on', async () => {
    const { record } = looks([STEP, { kind: 'pause', canal: 'MB1', payload: { what: 'sensitivity' } }])
    fireEvent.input(screen.getByLabelText('Reason'), { target: { value: 'Numb now.' } })
    await touch('Let it go on')
    expect(record).toHaveBeenLastCalledWith('MB1', '', { kind: 'resume', reason: 'Numb now.' })
  })
})

test('a coordinator looks and decides nothing', async () => {
  signedIn('Rosa', 'coordinator')
  looks([STEP, { kind: 'pause', canal: 'MB2', payload: { what: 'other' } }])
  await touch(/^Other canals/)
  await touch(/^MB2/)
  expect(buttons().every((name) => /^MB[12]/.test(name))).toBe(true)
  expect(screen.queryAllByRole('textbox')).toEqual([])
})

describe('taking over', () => {
  test('makes who said it work the case, and nobody else', () => {
    const { chair } = chairAfter([TAKEN], 'extracted')
    signedIn('Dr Vale', 'supervisor')
    expect([partIn(chair.course), works(chair.course)]).toEqual(['took_over', true])
    signedIn('Dr Amari', 'supervisor')
    expect([partIn(chair.course), works(chair.course)]).toEqual(['looking_in', false])
    expect(mayTell(chair.course, 'sign_off')).toBe(true)
    signedIn('Ines')
    expect(works(chair.course)).toBe(true)
  })

  test('is said to who took over, with the way back', () => {
    signedIn('Dr Vale', 'supervisor')
    const { chair, record } = chairAfter([TAKEN], 'extracted')
    render(<TakenOver chair={chair} />)
    fireEvent.click(screen.getByRole('button', { name: 'Give back' }))
    expect(record).toHaveBeenLastCalledWith('', '', { kind: 'give_back' })
  })

  test('is said to the student, who goes on recording', () => {
    signedIn('Ines')
    const { chair } = chairAfter([TAKEN], 'extracted')
    render(<TakenOver chair={chair} />)
    expect(screen.getByText(/has taken over\. What you record is kept as yours\./)).toBeTruthy()
    expect(buttons()).toEqual([])
  })
})

describe('an image that a supervisor asks for', () => {
  const wanted: Written = { kind: 'wanted', canal: 'MB1', actor: 'v', payload: { what: 'image' } }
  const image: Written = { kind: 'image', canal: 'MB1', payload: { image_id: 'i1' } }

  test('is shown to the student until there is one', () => {
    signedIn('Ines')
    const { chair } = chairAfter([wanted], 'extracted')
    render(<WantedImages chair={chair} />)
    expect(screen.getByText(/asks for an image of MB1\./)).toBeTruthy()
    expect(screen.getByText('Take a photo')).toBeTruthy()
  })

  test.each([
    ['asked', [wanted], ['MB1']],
    ['come', [wanted, image], []],
    ['one of another canal', [wanted, { ...image, canal: 'MB2' }], ['MB1']],
    ['one that was taken back', [wanted, image, { kind: 'undo', canal: 'MB1', payload: { undoes: '2' } }], ['MB1']],
    ['asked again', [wanted, image, wanted], ['MB1']],
    ['a sign-off that did not wait for it', [wanted, { kind: 'sign_off', canal: 'MB1', node: 'x' }], []],
    ['why there is none', [wanted, { ...STEP, payload: { exit: 'done', no_image: 'film' } }], []],
  ] as const)('%s', (_, events, open) => {
    const { chair } = chairAfter(events as readonly Written[], 'extracted')
    expect(wantedImages(chair).map((wanted) => wanted.canal)).toEqual(open)
  })
})
