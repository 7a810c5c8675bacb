import { createEvent, fireEvent, render, screen } from '@testing-library/preact'
import { useState } from 'preact/hooks'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Sheet } from '@/parts/rationale/sheet'
import { Unhurried, useAsked, useUnhurry } from '@/parts/unhurried'

const SHOWN_MS = 420 // a tap within 400 ms of the last change is not taken, and a frame passes before it is drawn

let taken: string[]
let write: () => Promise<void>

/** Two questions one after the other under the same button, a part of the screen of its own, and an emergency. */
function Screen() {
  const [asked, setAsked] = useState('first')
  const over = useUnhurry(asked)
  const answer = () => {
    taken.push(asked)
    void over.during(write()).then(() => setAsked('second'))
  }
  return (
    <Unhurried over={over} class="screen">
      <button type="button" onClick={answer}>
        Answer
      </button>
      <Part />
      <label class="button">
        <input type="file" class="unseen" onClick={() => taken.push('file')} />
        Choose
      </label>
      <button type="button" data-at-once onClick={() => taken.push('emergency')}>
        Emergency
      </button>
    </Unhurried>
  )
}

function Part() {
  const [open, setOpen] = useState(false)
  useAsked(String(open))
  return (
    <button type="button" onClick={() => setOpen(true)}>
      {open ? 'Opened' : 'Open'}
    </button>
  )
}

const button = (name = 'Answer') => screen.getByRole('button', { name })
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)
/** With the time that the tests' clock shows. */
function does(event: 'pointerDown' | 'click' | 'keyDown', name?: string, more: object = {}, at = performance.now()) {
  const made = createEvent[event](button(name), more)
  fireEvent(button(name), Object.defineProperty(made, 'timeStamp', { value: at }))
}
function tap(name?: string) {
  does('pointerDown', name)
  does('click', name)
}

beforeEach(() => {
  vi.useFakeTimers()
  taken = []
  write = () => Promise.resolve()
  render(<Screen />)
})
afterEach(() => vi.useRealTimers())

describe('a touch counts', () => {
  test('only where what it answers has been in sight for 400 ms, and the button says when', async () => {
    expect(button().getAttribute('aria-disabled')).toBe('true')
    await pass(SHOWN_MS - 1)
    tap()
    expect(taken).toEqual([])
    await pass(1)
    expect(button().hasAttribute('aria-disabled')).toBe(false)
    tap()
    expect(taken).toEqual(['first'])
  })

  test('for a file too: no camera opens for the second of two', async () => {
    fireEvent.click(screen.getByText('Choose'))
    expect(taken).toEqual([])
    await pass(SHOWN_MS)
    fireEvent.click(screen.getByText('Choose'))
    expect(taken).toEqual(['file'])
  })

  test('once: the second of two is no answer to what came in between', async () => {
    await pass(SHOWN_MS)
    tap()
    await pass(350)
    tap()
    expect(taken).toEqual(['first'])
    await pass(SHOWN_MS)
    tap()
    expect(taken).toEqual(['first', 'second'])
  })

  test('once while it is written, however long that takes', async () => {
    let done = () => {}
    write = () =>
      new Promise((resolve) => {
        done = resolve
      })
    await pass(SHOWN_MS)
    tap()
    await pass(5000)
    tap()
    expect(taken).toEqual(['first'])
    done()
    await pass(SHOWN_MS - 1)
    tap()
    expect(taken).toEqual(['first'])
    await pass(1)
    tap()
    expect(taken).toEqual(['first', 'second'])
  })

  test('from when the finger went down, not from when it was lifted', async () => {
    await pass(SHOWN_MS - 100)
    does('pointerDown')
    await pass(5000)
    does('click')
    expect(taken).toEqual([])
  })

  test('from when the finger went down, also where a busy phone hears of it later', async () => {
    await pass(SHOWN_MS + 300)
    does('pointerDown', undefined, {}, performance.now() - 301)
    does('click')
    expect(taken).toEqual([])
  })

  test('not again while a key is held down', async () => {
    await pass(SHOWN_MS)
    does('keyDown', undefined, { key: 'Enter' })
    does('click')
    for (let i = 0; i < 60; i++) {
      await pass(33)
      does('keyDown', undefined, { key: 'Enter', repeat: true })
      does('click')
    }
    expect(taken).toEqual(['first'])
    does('keyDown', undefined, { key: 'Enter' })
    does('click')
    expect(taken).toEqual(['first', 'second'])
  })

  test('without a finger or a key too, as from a reader of the screen', async () => {
    does('click')
    await pass(SHOWN_MS)
    does('click')
    expect(taken).toEqual(['first'])
  })

  test('after a part of the screen asked something else', async () => {
    await pass(SHOWN_MS)
    tap('Open')
    await pass(1)
    tap()
    expect(taken).toEqual([])
    await pass(SHOWN_MS)
    tap()
    expect(taken).toEqual(['first'])
  })
})

test('a button that comes while the others wait says so too', async () => {
  screen.getByRole('button', { name: 'Open' }).insertAdjacentHTML('afterend', '<button>Late</button>')
  await pass(1)
  expect(button('Late').getAttribute('aria-disabled')).toBe('true')
  await pass(SHOWN_MS)
  expect(button('Late').hasAttribute('aria-disabled')).toBe(false)
})

test('an emergency is taken at once, also while something is written', async () => {
  write = () => new Promise(() => {})
  tap('Emergency')
  await pass(SHOWN_MS)
  tap()
  tap('Emergency')
  expect(taken).toEqual(['emergency', 'first', 'emergency'])
  expect(button('Emergency').hasAttribute('aria-disabled')).toBe(false)
})

test('a sheet is answered 400 ms after it came into sight, however long that took', async () => {
  let shown = 0
  vi.spyOn(HTMLDialogElement.prototype, 'showModal').mockImplementation(function (this: HTMLDialogElement) {
    vi.advanceTimersByTime(100)
    shown = performance.now()
    this.open = true
  })
  function Asks() {
    const [open, setOpen] = useState(false)
    return (
      <Unhurried over={useUnhurry('')} class="screen">
        <button type="button" onClick={() => setOpen(true)}>
          Not sure
        </button>
        {open && (
          <Sheet title="Not sure?" onClose={() => undefined}>
            <button type="button" onClick={() => taken.push('asked')}>
              Ask
            </button>
          </Sheet>
        )}
      </Unhurried>
    )
  }
  render(<Asks />)
  await pass(SHOWN_MS)
  tap('Not sure')
  await pass(50)
  await pass(shown + SHOWN_MS - 1 - performance.now())
  tap('Ask')
  expect(taken).toEqual([])
  await pass(1)
  tap('Ask')
  expect(taken).toEqual(['asked'])
})
