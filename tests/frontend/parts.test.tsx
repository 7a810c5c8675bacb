import { fireEvent, render, screen } from '@testing-library/preact'
import { useState } from 'preact/hooks'
import { describe, expect, test, vi } from 'vitest'
import { Stepper } from '@/parts/fields'
import { Seen } from '@/parts/seen'

describe('what is seen of the server’s things', () => {
  const again = vi.fn()
  const shown = (of: Partial<Parameters<typeof Seen<string>>[0]['of']>) =>
    render(<Seen of={{ state: 'fresh', again, ...of }}>{(value) => <p>{value}</p>}</Seen>)

  test('nothing yet: rows in its shape, and after a while a word', async () => {
    vi.useFakeTimers()
    shown({ state: 'asking' })
    expect(screen.getByRole('status', { name: 'On its way' })).toBeTruthy()
    expect(screen.queryByText(/Still asking/)).toBeNull()
    await vi.advanceTimersByTimeAsync(3000)
    vi.useRealTimers()
    expect(await screen.findByText(/Still asking/)).toBeTruthy()
  })

  test('a copy while asking is shown without a word', () => {
    shown({ state: 'asking', value: 'seen before' })
    expect(screen.getByText('seen before')).toBeTruthy()
    expect(screen.queryByRole('status')).toBeNull()
  })

  test('offline: the copy, when it was seen, and a way to try again', () => {
    shown({ state: 'offline', value: 'seen before', at: Date.now() })
    expect(screen.getByText(/This is what was seen \d\d:\d\d/)).toBeTruthy()
    fireEvent.click(screen.getByRole('button', { name: 'Try again' }))
    expect(again).toHaveBeenCalled()
  })

  test('offline with no copy says so', () => {
    shown({ state: 'offline' })
    expect(screen.getByText(/nothing of this is on the phone yet/)).toBeTruthy()
  })

  test('failed: the server’s own sentence', () => {
    shown({ state: 'failed', problem: new Error('There is no such case here.') })
    expect(screen.getByRole('alert').textContent).toContain('There is no such case here.')
  })
})

describe('a stepper', () => {
  function Form({ first }: { first: string }) {
    const [value, setValue] = useState(first)
    return <Stepper label="Stop" value={value} begins={18.5} onInput={setValue} />
  }
  const value = () => (screen.getByRole('textbox', { name: /Stop/ }) as HTMLInputElement).value
  const press = (sign: 'less' | 'more') => fireEvent.click(screen.getByRole('button', { name: `Stop: ${sign} by 0.5` }))

  test('starts empty, and its first step is where stepping begins', () => {
    render(<Form first="" />)
    expect(value()).toBe('')
    press('more')
    expect(value()).toBe('18.5')
  })

  test.each([
    ['19,5', 'more', '20.0'],
    ['19.5', 'less', '19.0'],
    ['0.3', 'more', '0.8'],
  ] as const)('from %s one %s is %s', (first, sign, next) => {
    render(<Form first={first} />)
    press(sign)
    expect(value()).toBe(next)
  })

  test('keeps what is typed also while it is no number', () => {
    render(<Form first="" />)
    fireEvent.input(screen.getByRole('textbox', { name: /Stop/ }), { target: { value: '19,' } })
    expect(value()).toBe('19,')
  })
})
