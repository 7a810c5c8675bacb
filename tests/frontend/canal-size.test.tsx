import { fireEvent, render, screen } from '@testing-library/preact'
import { expect, test, vi } from 'vitest'
import type { CanalChoice, Kit } from '@/api/shapes'
import { CanalSize } from '@/screens/plan/canal-size'
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
  render(<CanalSize canal={planned} kit={kit as unknown as Kit} choice={choice} onChoose={onChoose} />)
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
