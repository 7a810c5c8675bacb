import { fireEvent, render, screen } from '@testing-library/preact'
import { describe, expect, test, vi } from 'vitest'
import type { CanalChoice, Kit } from '@/api/shapes'
import { CanalSize } from '@/screens/case/plan/canal-size'
import { canal } from './sample-plan'

const sizes = [25, 30, 35, 40, 50]
const kit = {
  id: 'k',
  name: 'Kit',
  needles: [],
  instruments: sizes.map((size) => ({ size, taper: 3, use: 'shaping' })),
}
const planned = canal('MB', 18, {
  final_size: 35,
  size_range: {
    least: 30,
    most: 40,
    proposed: 30,
    options: [],
    reasons: [
      {
        code: 'floor',
        bound: 'least' as const,
        size: 30,
        says: 'Why.',
        row: 'final.floor',
        source: 'Invented for this test',
        know: 'programme rule',
      },
    ],
  },
})

function open(choice?: CanalChoice) {
  const onChoose = vi.fn()
  render(<CanalSize canal={planned} kit={kit as unknown as Kit} choice={choice} decided={false} onChoose={onChoose} />)
  return onChoose
}

test('a step goes to the next size the kit has', () => {
  const onChoose = open({ canal: 'MB', final_size: 40 })
  fireEvent.click(screen.getByRole('button', { name: /one size larger/ }))
  expect(onChoose).toHaveBeenCalledWith({ final_size: 50 })
})

test('past the last size there is no step', () => {
  open({ canal: 'MB', final_size: 50 })
  expect((screen.getByRole('button', { name: /one size larger/ }) as HTMLButtonElement).disabled).toBe(true)
})

test('within the range no reason is asked for, outside it is', () => {
  open({ canal: 'MB', final_size: 40 })
  expect(screen.queryByLabelText('Why outside the advised range')).toBeNull()
})

test('outside the range a reason is asked for', () => {
  const onChoose = open({ canal: 'MB', final_size: 50 })
  fireEvent.input(screen.getByLabelText('Why outside the advised range'), { target: { value: 'Wide canal.' } })
  expect(onChoose).toHaveBeenCalledWith({ reason: 'Wide canal.' })
})

test('the proposed size can be taken back', () => {
  const onChoose = open({ canal: 'MB', final_size: 40 })
  fireEvent.click(screen.getByRole('button', { name: 'Take the proposed 30' }))
  expect(onChoose).toHaveBeenCalledWith({ final_size: null, reason: '' })
})

describe('what a size means', () => {
  const option = { wall_share: null, wall_left_mm: null, strain_pct: null }
  const options = [
    { size: 35, inside: true, wall_share: 0.615, wall_left_mm: 0.58, strain_pct: 3.8 },
    { ...option, size: 45, inside: false },
    { ...option, size: 50, inside: false },
  ]
  const sized = canal('MB', 18, { final_size: 35, size_range: { ...planned.size_range, options } })
  const show = (choice?: CanalChoice) => {
    const onChoose = vi.fn()
    render(<CanalSize canal={sized} kit={kit as unknown as Kit} choice={choice} decided={false} onChoose={onChoose} />)
    return onChoose
  }

  test('is told beside it: wall reached, wall left, strain', () => {
    show()
    const facts = [...document.querySelectorAll('.size-facts dd')].map((dd) => dd.textContent)
    expect(facts).toEqual(['62\u00a0%', '0.58 mm', '3.8\u00a0%'])
  })

  test('is compared only in what is known of some size', () => {
    const bare = {
      ...sized,
      size_range: { ...sized.size_range, options: options.map((o) => ({ ...o, strain_pct: null })) },
    }
    render(<CanalSize canal={bare} kit={kit as unknown as Kit} choice={undefined} decided={false} onChoose={vi.fn()} />)
    const heads = screen.getAllByRole('columnheader', { hidden: true }).map((th) => th.textContent)
    expect(heads).toEqual(['Size', 'wall reached', 'wall left'])
  })

  test('is inside or outside by sign and word', () => {
    show({ canal: 'MB', final_size: 50, reason: 'Wide.' })
    const now = document.querySelector('.size-now .in-or-out')
    expect(now?.textContent).toBe(' outside')
    expect(now?.querySelector('svg')?.getAttribute('data-sign')).toBe('caution')
  })

  test('can be taken from the list; a size the kit lacks cannot', () => {
    const onChoose = show()
    fireEvent.click(screen.getByRole('button', { name: /MB: take size 50/, hidden: true }))
    expect(onChoose).toHaveBeenCalledWith({ final_size: 50 })
    const lacking = screen.getByRole('button', { name: /MB: take size 45/, hidden: true })
    expect((lacking as HTMLButtonElement).disabled).toBe(true)
  })

  test('a reason carries its source and how that is known', () => {
    show()
    const reason = screen.getByText('Why.').closest('li')
    expect(reason?.textContent).toContain('Why.Invented for this test')
    expect(reason?.textContent).toContain('Programme rule')
  })
})

describe('a wide canal', () => {
  const wide = canal('MB', 18, {
    final_size: null,
    size_range: { ...planned.size_range, least: 36, most: 30, proposed: null },
  })
  const show = (choice?: CanalChoice, over: Partial<typeof wide> = {}, decided = false) => {
    const onChoose = vi.fn()
    const of = { ...wide, ...over }
    render(<CanalSize canal={of} kit={kit as unknown as Kit} choice={choice} decided={decided} onChoose={onChoose} />)
    return onChoose
  }
  const now = () => document.querySelector('.size-now')?.textContent

  test('has no size proposed, says who chooses, and offers none to take back', () => {
    show()
    expect(now()).toBe('no size yet')
    expect(screen.getByText('at least 36, at most 30')).toBeTruthy()
    expect(screen.getByText('A wide canal: no size is proposed.')).toBeTruthy()
    expect(screen.getByText(/Your supervisor chooses it/)).toBeTruthy()
    expect(screen.queryByText(/Take the proposed/)).toBeNull()
    expect(screen.queryByLabelText('Why outside the advised range')).toBeNull()
  })

  test('stepping begins at what it asks for', () => {
    const onChoose = show()
    fireEvent.click(screen.getByRole('button', { name: /one size larger/ }))
    fireEvent.click(screen.getByRole('button', { name: /one size smaller/ }))
    expect(onChoose.mock.calls).toEqual([[{ final_size: 40 }], [{ final_size: 30 }]])
  })

  test('a wish is said to open nothing', () => {
    show({ canal: 'MB', final_size: 50 }, { final_size: 50 })
    expect(now()).toBe('50/.03')
    expect(screen.getByText(/opens nothing/)).toBeTruthy()
  })

  test('what the supervisor chose is shown, and the student sets nothing any more', () => {
    show({ canal: 'MB', final_size: 40 }, { final_size: 50 }, true)
    expect(screen.getByText(/Your supervisor chose 50\/\.03/)).toBeTruthy()
    expect(screen.queryByRole('button', { name: /one size larger/ })).toBeNull()
    expect(screen.queryByText(/opens nothing/)).toBeNull()
  })
})
