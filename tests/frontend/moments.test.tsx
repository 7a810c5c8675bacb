import { fireEvent, render, screen } from '@testing-library/preact'
import { useState } from 'preact/hooks'
import { describe, expect, test } from 'vitest'
import type { Plan } from '@/api/shapes'
import { AboutEstimate, DepthsView } from '@/parts/depth-board/depths-view'
import { atTray, ofCanal, progressAt } from '@/parts/depth-board/moments'
import { WithReasons } from '@/parts/rationale/why'
import { forecast } from './sample-expected'

const numbers = (moments: ReturnType<typeof ofCanal>) =>
  moments.map((m) => `${m.canal} ${m.step.instrument} ${m.step.pass_number}`)

describe('stepping through the work', () => {
  const { canals, tray } = forecast()

  test('of one canal is its own order', () => {
    expect(numbers(canals.slice(0, 1).flatMap(ofCanal))).toEqual([
      'MB 10/.02 hand 1',
      'MB 35/.03 continuous 1',
      'MB 35/.03 continuous 2',
    ])
  })

  test('at the tray follows each taking-up of an instrument, canal by canal', () => {
    expect(numbers(atTray(canals, tray))).toEqual([
      'MB 10/.02 hand 1',
      'DB 10/.02 hand 1',
      'MB 35/.03 continuous 1',
      'DB 35/.03 continuous 1',
      'MB 35/.03 continuous 2',
    ])
  })

  test('what is done is counted canal by canal; past the last the plan stands as a whole', () => {
    const moments = atTray(canals, tray)
    expect([...(progressAt(moments, 0)?.done ?? [])]).toEqual([
      ['MB', 0],
      ['DB', 0],
    ])
    expect([...(progressAt(moments, 3)?.done ?? [])]).toEqual([
      ['MB', 2],
      ['DB', 1],
    ])
    expect(progressAt(moments, 5)?.now).toBe(moments[4])
    expect(progressAt(moments, 6)).toBeUndefined()
  })
})

describe('on the screen', () => {
  function Screen({ plan }: { plan: Plan }) {
    const [picked, setPicked] = useState('MB')
    const [expected, setExpected] = useState(plan.setting !== 'clinic')
    const shown = {
      plan,
      before: undefined,
      picked,
      onPick: setPicked,
      expected,
      onExpected: setExpected,
    }
    return (
      <WithReasons plan={plan}>
        <DepthsView {...shown} />
        <AboutEstimate canals={plan.canals} />
      </WithReasons>
    )
  }
  const back = () => fireEvent.click(screen.getByRole('button', { name: 'One step back' }))
  const slider = () => screen.getByRole('slider', { name: 'Step through the work' }) as HTMLInputElement

  test('the plan stands as a whole until it is stepped through, and says how many passes are expected', () => {
    const { container } = render(<Screen plan={forecast()} />)
    expect(screen.getByText(/The series should reach its length in 2 passes \(1 to 3\)/)).toBeTruthy()
    expect(slider().getAttribute('aria-valuetext')).toBe('the whole plan')
    expect(container.querySelector('.in-hand')).toBeNull()
    expect(container.querySelectorAll('.faint')).toHaveLength(5)
  })

  test('a step shows the instrument, its expected depth with the band, and says both in words', () => {
    const { container } = render(<Screen plan={forecast()} />)
    back()
    back()
    expect(slider().getAttribute('aria-valuetext')).toBe('2 of 3: 35/.03 in MB, expected at 15.2')
    expect(container.querySelectorAll('.in-hand')).toHaveLength(1)
    expect(container.querySelectorAll('.bracket path')).toHaveLength(1)
    const says = container.querySelector('output')?.textContent
    expect(says).toContain('expected')
    expect(says).toContain('15.2')
    expect(says).toContain('usually 14.4–16.0')
    expect(says).toContain('reaches its stop in 4 of 100')
  })

  test('the wide diameter of an oval canal is a second outline', () => {
    const { container } = render(<Screen plan={forecast()} />)
    expect(container.querySelectorAll('.initial-shape')).toHaveLength(4)
    expect(container.querySelectorAll('.initial-shape.wide')).toHaveLength(2)
    expect(screen.getByText(/dashed: wide diameter/)).toBeTruthy()
  })

  test('a recorded depth is a mark of its own, and no band is drawn for it', () => {
    const plan = forecast()
    for (const step of plan.canals[0]?.expectation?.steps.slice(1, 2) ?? []) step.felt = 'shorter'
    const { container } = render(<Screen plan={plan} />)
    back()
    back()
    expect(container.querySelectorAll('.felt')).toHaveLength(1)
    expect(container.querySelector('.bracket')).toBeNull()
    expect(screen.getByText('shorter than expected')).toBeTruthy()
  })

  test('before anything, the widths say where they are from and that they are to be checked', () => {
    const { container } = render(<Screen plan={forecast()} />)
    fireEvent.input(slider(), { target: { value: '0' } })
    expect(container.querySelector('output')?.textContent).toContain('Reference value, check')
    expect(screen.getAllByText(/Widths: Invented for this test/)).toHaveLength(1)
  })

  test('the tray steps through all canals', () => {
    render(<Screen plan={forecast()} />)
    fireEvent.click(screen.getByRole('checkbox', { name: 'All canals' }))
    back()
    expect(slider().getAttribute('aria-valuetext')).toMatch(/^5 of 5: /)
  })

  test('in the clinic nothing is expected until it is asked for', () => {
    const { container } = render(<Screen plan={forecast({ setting: 'clinic' })} />)
    expect(screen.queryByRole('slider')).toBeNull()
    expect(container.querySelector('.faint')).toBeNull()
    fireEvent.click(screen.getByRole('checkbox', { name: 'Show expected depths' }))
    expect(slider()).toBeTruthy()
  })
})
