import { fireEvent, render, screen } from '@testing-library/preact'
import { useState } from 'preact/hooks'
import { describe, expect, test, vi } from 'vitest'
import { CanalPicture } from '@/parts/canal-picture/canal-picture'
import { axisOf, boardOf, detents, dragged, stepped, taken, yAt } from '@/parts/canal-picture/geometry'
import { profile, yOf } from '@/parts/depth-board/geometry'
import { drawn } from './sample-plan'

const WALL = [
  { from_reference_mm: 6, diameter_mm: 1.3 },
  { from_reference_mm: 21, diameter_mm: 0.25 },
]
const CANAL = { canal: 'MB1', wall: WALL, end_mm: 21, stop_um: 21_000 }
const RANGE = { depth_mm: 18.2, low_mm: 17.4, high_mm: 19 }

describe('the axis', () => {
  // By hand: 6 to 23 mm are 17; of 419 px remain 419 − 30 − 14 = 375, 22.06 a millimetre. Of 265 remain 221: 13 a millimetre.
  const tall = axisOf(419, CANAL)
  const short = axisOf(265, CANAL)

  test('goes from the orifice to two millimetres past the stop, and fills its room', () => {
    expect([tall.from_mm, tall.to_mm]).toEqual([6, 23])
    expect(tall.px_per_mm).toBeCloseTo(22.06, 2)
    expect(short.px_per_mm).toBeCloseTo(13, 6)
    expect(yAt(short, 6_000)).toBe(30)
    expect(yAt(short, 23_000)).toBeCloseTo(265 - 14, 6)
  })

  test('shows all of a canal of which the stop in hand lies far above the end', () => {
    expect(axisOf(300, { ...CANAL, stop_um: 11_000 }).to_mm).toBe(22)
  })

  test('is geared where half a millimetre is less than a thumb can keep apart', () => {
    expect([tall.geared, short.geared]).toEqual([1, 2])
    const all = detents(short, 21_000)
    // 13 px are a millimetre of the picture, 26 px of the thumb's way.
    expect(dragged(short, all, 18_000, 26)).toBe(19_000)
    expect(dragged(tall, detents(tall, 21_000), 18_000, 22)).toBe(19_000)
    expect(dragged(short, all, 18_000, 5000)).toBe(23_000)
  })

  test('has a detent every half millimetre, and one at a stop that lies between two', () => {
    const all = detents(short, 18_700)
    expect(all).toHaveLength(17 * 2 + 1 + 1)
    expect(taken(short, all, yAt(short, 18_640))).toBe(18_700)
    expect([stepped(all, 18_500, 1), stepped(all, 18_700, 1), stepped(all, 18_700, -2)]).toEqual([
      18_700, 19_000, 18_000,
    ])
    expect([stepped(all, 23_000, 1), stepped(all, 6_500, -4), stepped(all, 22_500, 4)]).toEqual([23_000, 6_000, 23_000])
  })

  test('is the board’s: the canal stands at true taper with its millimetres where the strip has them', () => {
    const board = boardOf(short, 120, 265, WALL, drawn(30, 4))
    expect(yOf(board, 18.5)).toBeCloseTo(yAt(short, 18_500), 6)
    const x = profile({ board, index: 0, canal: CANAL, side: 0 }, WALL)
      .split(' ')
      .map((pair) => Number(pair.split(',')[0]))
    expect(Math.max(...x) - Math.min(...x)).toBeCloseTo(1.3 * board.widened * board.px_per_mm, 0)
    expect(Math.min(...x)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...x)).toBeLessThanOrEqual(120)
  })
})

function Held({ hand = 'right' }: { hand?: 'right' | 'left' }) {
  const [depth_um, setDepth] = useState<number>()
  return (
    <CanalPicture
      canal={CANAL}
      instrument={{ name: '30/.04', outline: drawn(30, 4) }}
      expected={RANGE}
      depth_um={depth_um}
      onDepth={setDepth}
      hand={hand}
    />
  )
}

const slider = () => screen.getByRole('slider', { name: 'Where 30/.04 stopped' })
const says = () => slider().getAttribute('aria-valuetext')
const key = (name: string) => fireEvent.keyDown(slider(), { key: name })

describe('the strip', () => {
  test('has no number before it is touched', () => {
    const { container } = render(<Held />)
    expect(says()).toBe('not set')
    expect(container.querySelector('.handle')?.textContent).toBe('↓')
  })

  test('is stepped by keys from one short of the stop, and says how the depth lies', () => {
    render(<Held />)
    key('ArrowUp')
    expect(says()).toBe('20.5, 0.5 short of the stop, below the range')
    key('PageUp')
    expect(says()).toBe('18.5, 2.5 short of the stop, in range')
    key('End')
    expect(says()).toBe('23.0, 2.0 past the stop, below the range')
    key('Home')
    expect(says()).toBe('6.0, 15.0 short of the stop, above the range')
  })

  test('reads what is typed; what is no depth on it sets nothing', () => {
    render(<Held />)
    key('1')
    expect(says()).toBe('not set')
    for (const each of '8,5') key(each)
    expect(says()).toBe('18.5, 2.5 short of the stop, in range')
    key('Enter')
    for (const each of '21') key(each)
    expect(says()).toBe('21.0, at the stop, below the range')
  })

  test.each(['25', '185', '20', '6,'])('what is typed never leaves another depth standing: %s', (typed) => {
    render(<Held />)
    for (const each of '20') key(each)
    key('Enter')
    for (const each of typed) key(each)
    const isDepth = { '20': '20.0', '6,': '6.0' }[typed]
    expect(says()).toMatch(isDepth ? new RegExp(`^${isDepth},`) : 'not set')
    expect(screen.queryByRole('alert')?.textContent).toBe(
      isDepth ? undefined : 'No depth here: 6.0 to 23.0 mm can be set. Type it again.',
    )
    // Another begins anew, and says nothing any more.
    if (isDepth) key('Enter')
    for (const each of '18.5') key(each)
    expect(says()).toMatch(/^18.5,/)
    expect(screen.queryByRole('alert')).toBe(null)
  })

  test('takes the tip to the finger, then moves it as the finger moves, and each detent is felt', () => {
    const { container } = render(<Held />)
    const vibrate = vi.fn()
    vi.stubGlobal('navigator', { vibrate })
    const strip = container.querySelector('.strip') as HTMLElement
    strip.getBoundingClientRect = () => ({ top: 100 }) as DOMRect
    // 300 px high: 256 for 17 mm, 15.06 a millimetre, geared by two. 12 mm below the orifice: 30 + 180.7 px.
    fireEvent.pointerDown(strip, { clientY: 311, pointerId: 1 })
    expect(says()).toMatch(/^18.0,/)
    fireEvent.pointerMove(strip, { clientY: 311 + 15 })
    expect(says()).toMatch(/^18.5,/)
    expect(vibrate.mock.calls).toEqual([[5], [5]])
    fireEvent.pointerUp(strip)
    fireEvent.pointerMove(strip, { clientY: 400 })
    expect(says()).toMatch(/^18.5,/)
    // Another touch elsewhere moves nothing by itself.
    fireEvent.pointerDown(strip, { clientY: 150, pointerId: 2 })
    expect(says()).toMatch(/^18.5,/)
    vi.unstubAllGlobals()
  })
})

test('the picture says in words what it shows', () => {
  render(<Held />)
  expect(
    screen.getByRole('img', { name: 'MB1 as it is now, it ends at 21.0, 30/.04 is in hand, stop 21.0' }),
  ).toBeTruthy()
  key('ArrowUp')
  expect(screen.getByRole('img', { name: /30\/.04 stands at 20.5/ })).toBeTruthy()
})
