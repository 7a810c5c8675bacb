import { fireEvent, render, screen, within } from '@testing-library/preact'
import { useState } from 'preact/hooks'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Plan } from '@/api/shapes'
import { Dock } from '@/screens/chair/dock'
import { ContactTime } from '@/screens/chair/irrigate'
import { AboutStep, NowCard } from '@/screens/chair/now-card'
import { StepPicture } from '@/screens/chair/step-picture'
import { endContact, startContact } from '@/store/chair/contact-time'
import { expectedRest } from '@/store/chair/expected'
import { setHand } from '@/store/device/preferences'
import { signedIn } from './people'
import { chairAfter, HAND, left, NOON, ROTARY } from './sample-work'
import { until } from './until'

type Events = Parameters<typeof chairAfter>[0]

/** The card and the dock of one canal after these events; what is answered lands in `recorded`. */
function at(events: Events, name = 'MB', over: Partial<Plan> = {}) {
  const made = chairAfter(events, over)
  const canal = made.chair.plan.canals.find((planned) => planned.canal === name)
  const course = made.chair.course.canals[name]
  if (!canal || !course) throw new Error(name)
  const shown = render(<Step chair={made.chair} canal={canal} course={course} />)
  return { ...made, ...shown }
}

type StepProps = Pick<Parameters<typeof NowCard>[0], 'chair' | 'canal' | 'course'>

/** As the screen puts it together. */
function Step(props: StepProps) {
  const [depth_um, onDepth] = useState<number>()
  const ahead = expectedRest(props.chair, undefined, undefined)
  const tip = { depth_um, onDepth }
  const picture = (
    <StepPicture {...props} canals={props.chair.plan.canals} ahead={ahead} tip={tip} onTurn={() => undefined} />
  )
  return (
    <>
      <NowCard {...props} picture={picture} />
      <AboutStep {...props} />
      <Dock {...props} tip={tip} onTurnedBack={() => undefined} />
    </>
  )
}

const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }))
const SHAPED = left('shape', 'short', { depth_um: 12_000 })
const WORKED = [SHAPED, left('rinse', 'done'), left('small', 'reached')]

beforeEach(() => {
  vi.useFakeTimers({ now: NOON + 1000, toFake: ['Date', 'setInterval', 'clearInterval'] })
  localStorage.clear()
  signedIn('ines')
})
afterEach(() => vi.useRealTimers())

describe('a depth', () => {
  test('is empty until it is touched, and nothing can be answered with it', () => {
    const { recorded } = at([])
    const stopped = screen.getByRole('button', { name: 'Stopped at —' }) as HTMLButtonElement
    expect(stopped.disabled).toBe(true)
    expect(screen.getByRole('slider').getAttribute('aria-valuetext')).toBe('not set')
    fireEvent.click(stopped)
    expect(recorded).toEqual([])
  })

  test('is told in half millimetres from one short of the stop', () => {
    const { recorded } = at([])
    for (const key of ['ArrowDown', 'ArrowUp', 'ArrowUp']) fireEvent.keyDown(screen.getByRole('slider'), { key })
    press('Stopped at 17.0')
    expect(recorded[0]?.payload).toMatchObject({ kind: 'step', exit: 'short', depth_um: 17_000, stop_um: 18_500 })
  })

  test('may lie past the stop: a fact is taken as it is', () => {
    const { recorded } = at([])
    fireEvent.input(screen.getByRole('slider'), { target: { value: '19000' } })
    press('Stopped at 19.0')
    expect(recorded[0]?.payload).toMatchObject({ depth_um: 19_000 })
  })
})

describe('the card', () => {
  test('says where one is, the stop, the motor and what the length rests on', () => {
    const { container } = at([])
    const text = container.textContent ?? ''
    for (const said of ['step 1 of about 5', '18.5', 'to resistance', 'rests on confirming image'])
      expect(text).toContain(said)
  })

  test('holds back an engine instrument whose setting is not stated, and says where to look it up', () => {
    const silent = chairAfter([]).chair.plan.tray_list.map((item) => ({
      ...item,
      instrument: { ...item.instrument, setting_stated: item.instrument.motion === 'hand' },
    }))
    at([], 'MB', { tray_list: silent })
    expect(screen.getByRole('alert').textContent).toContain('maker’s instructions')
    expect(screen.queryByRole('button', { name: /Stopped at|At its stop|At length/ })).toBeNull()
    expect(screen.getByRole('button', { name: 'Problem' })).toBeTruthy()
  })

  test('says what to look for on what has come out; with patients one thing more', () => {
    expect(at([SHAPED]).container.querySelector('.just-out')?.textContent).toContain('look at 35/.03')
    expect(at([SHAPED], 'MB', { setting: 'clinic' }).container.textContent).toContain('Once only.')
  })
})

describe('an irrigant', () => {
  const toEdta = [...WORKED]
  test('with a stated time: started by one touch, its seconds go along with the answer', () => {
    const { recorded } = at(toEdta)
    const steady = vi.spyOn(performance, 'now').mockReturnValue(0)
    press('It is in: start the time')
    vi.setSystemTime(NOON + 66_000)
    steady.mockReturnValue(65_000)
    press(/^Done after/)
    steady.mockRestore()
    expect(recorded[0]?.payload).toMatchObject({ exit: 'done', irrigant: 'edta', volume_ml: 5, contact_s: 65 })
  })

  test('is warned of once it is in for longer than it may be', () => {
    const steady = vi.spyOn(performance, 'now').mockReturnValue(0)
    const started_ms = Date.now()
    startContact(['c1', 'MB', 'edta'])
    vi.setSystemTime(started_ms + 601_000)
    steady.mockReturnValue(601_000)
    const { chair } = chairAfter(toEdta)
    const [canal] = chair.plan.canals
    const course = chair.course.canals.MB
    const node = course?.walk.node
    if (!canal || !course || node?.kind !== 'do') throw new Error('MB')
    render(<ContactTime chair={chair} canal={canal} course={course} node={node} />)
    expect(screen.getByRole('timer').textContent).toBe('10:01 of about 1:00')
    expect(screen.getByRole('alert').textContent).toContain('Over 10:00')
    steady.mockRestore()
    endContact(['c1', 'MB', 'edta'])
  })

  test('whose time a clock that was set has made unknown: no figure, and none is recorded', () => {
    const { recorded } = at(toEdta)
    const steady = vi.spyOn(performance, 'now').mockReturnValue(0)
    press('It is in: start the time')
    vi.setSystemTime(Date.now() + 3_600_000)
    steady.mockReturnValue(5000)
    press(/^Done/)
    steady.mockRestore()
    expect(recorded[0]?.payload).toMatchObject({ exit: 'done', irrigant: 'edta', contact_s: null })
  })

  test('without a stated time: done at once, and it says none was counted', () => {
    const { recorded } = at([SHAPED])
    press('Irrigated 2 ml')
    expect(recorded[0]?.payload).toMatchObject({ irrigant: 'sodium_hypochlorite', contact_s: null })
  })

  test('is saline after an accident, on the card and in what is recorded', () => {
    const kept = { kind: 'resume' as const, canal: '', actor: 'v', payload: { keep_saline: true } }
    const accident = { kind: 'emergency' as const, canal: '', payload: { what: 'hypochlorite_accident' } }
    const { recorded, container } = at([...toEdta, accident, kept])
    expect(container.querySelector('.now-words')?.textContent).toBe('saline')
    expect(container.textContent).not.toContain('EDTA')
    press('Irrigated 5 ml')
    expect(recorded[0]?.payload).toMatchObject({ irrigant: 'saline', volume_ml: 5 })
  })
})

describe('instruments', () => {
  test('are looked at before another canal is worked, each recorded', async () => {
    const { recorded } = at(WORKED, 'DB')
    expect(screen.getByText('Look at 35/.03 and 10/.02 first')).toBeTruthy()
    expect(screen.queryByRole('slider')).toBeNull()
    press('All as they were')
    await until(() => expect(recorded).toHaveLength(2))
    expect(recorded.map(({ canal, payload }) => [canal, payload])).toEqual(
      [ROTARY, HAND].map((instrument) => ['', { kind: 'inspected', instrument, found: 'whole', why: '' }]),
    )
  })

  test('one that was discarded is not answered with: a new one is taken', () => {
    const discarded = {
      kind: 'inspected' as const,
      canal: '',
      payload: { instrument: ROTARY, found: 'discarded', why: 'Bent' },
    }
    const { recorded } = at([...WORKED, left('edta', 'done'), discarded])
    expect(screen.getByText('Take a new 35/.03')).toBeTruthy()
    expect(screen.getByText('The one in use was discarded: bent.')).toBeTruthy()
    press('New one in hand')
    expect(recorded[0]?.payload).toMatchObject({ kind: 'inspected', found: 'whole', instrument: ROTARY })
  })
})

describe('ways out', () => {
  test('one’s own last entry can be taken back for ten minutes, and it says which', () => {
    const { recorded } = at([SHAPED])
    press('Take back: MB 35/.03 stopped at 12.0')
    expect(recorded[0]?.payload).toEqual({ kind: 'undo', undoes: 'e1' })
    vi.setSystemTime(NOON + 10 * 60_000)
    vi.advanceTimersByTime(10_000)
    return until(() => expect(screen.queryByRole('button', { name: /Take back/ })).toBeNull())
  })

  const undoes = (events: Events) => {
    const { recorded, unmount } = at(events)
    fireEvent.click(screen.getByRole('button', { name: /^Take back/ }))
    unmount()
    return recorded[0]
  }
  const undo = (canal: string, id: string) => ({ canal, node: '', payload: { kind: 'undo', undoes: id } })

  test('a pause, an instrument looked at and an irrigation can be taken back too', () => {
    expect(undoes([SHAPED, { kind: 'pause', payload: { what: 'sensitivity' } }])).toEqual(undo('MB', 'e2'))
    const looked = { kind: 'inspected' as const, canal: '', payload: { instrument: ROTARY, found: 'whole', why: '' } }
    expect(undoes([SHAPED, looked])).toEqual(undo('', 'e2'))
    const irrigated = { kind: 'irrigated' as const, payload: { irrigant: 'saline', volume_ml: 5 } }
    expect(undoes([SHAPED, irrigated])).toEqual(undo('MB', 'e2'))
  })

  test('a note, on this phone or another, stands in no undo’s way; a discard and a supervisor’s sign-off do', () => {
    const note = { kind: 'note' as const, payload: { text: 'Firm.' } }
    expect(undoes([SHAPED, note, { ...note, canal: '' }])).toEqual(undo('MB', 'e1'))
    expect(undoes([SHAPED, { ...note, actor: 'v' }])).toEqual(undo('MB', 'e1'))
    at([SHAPED, { kind: 'resume', actor: 'v', payload: { reason: 'Seen.' } }])
    expect(screen.queryByRole('button', { name: /^Take back/ })).toBeNull()
  })

  test('each answer keeps its place, whether a depth is asked for or not', () => {
    const places = (events: Events) => {
      const { container, unmount } = at(events)
      const answers = [...container.querySelectorAll('.step-answers > button')].map((button) => button.textContent)
      unmount()
      return answers
    }
    expect(places([])).toEqual(['Stopped at —', 'At its stop, 18.5'])
    const toLength = [...WORKED, left('edta', 'done')]
    const inHand = { kind: 'inspected' as const, canal: '', payload: { instrument: ROTARY, found: 'whole', why: '' } }
    expect(places([...toLength, inHand])).toEqual(['At length 18.5'])
    at([...toLength, inHand])
    fireEvent.keyDown(screen.getByRole('slider'), { key: 'ArrowUp' })
    expect([...document.querySelectorAll('.step-answers > button')].map((button) => button.textContent)).toEqual([
      'Stopped at 18.0',
      'At length 18.5',
    ])
  })

  test('the answers lie on the side of the chosen hand', () => {
    expect(at([]).container.querySelector('.dock')?.getAttribute('data-hand')).toBe('right')
    setHand('left')
    expect(at([]).container.querySelector('.dock')?.getAttribute('data-hand')).toBe('left')
    expect(localStorage.getItem('fourth-canal-hand')).toBe('left')
    setHand('right')
  })

  test('not being sure is an answer: a supervisor is asked about this very step', () => {
    const { recorded } = at([])
    press('Not sure')
    expect(screen.getByText('Invented reason of the step.', { selector: '.sheet p' })).toBeTruthy()
    fireEvent.click(within(screen.getByRole('dialog', { hidden: true })).getByText('Ask a supervisor'))
    expect(recorded).toEqual([{ canal: 'MB', node: 'shape', payload: { kind: 'ask', note: '' } }])
  })

  test('a canal pauses for a reason, and says what to do meanwhile', () => {
    const { recorded } = at([])
    press('Problem')
    fireEvent.click(screen.getByText('It hurts'))
    expect(recorded[0]).toEqual({ canal: 'MB', node: '', payload: { kind: 'pause', what: 'sensitivity', reason: '' } })
    at([{ kind: 'pause', payload: { what: 'sensitivity' } }])
    expect(screen.getByText('Wait a while.')).toBeTruthy()
  })
})
