import { fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { Halted, SalineOnly } from '@/screens/chair/halted'
import { signedIn } from './people'
import { chairAfter, NOON } from './sample-work'

const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }))

beforeEach(() => {
  vi.useFakeTimers({ now: NOON + 1000, toFake: ['Date', 'setInterval', 'clearInterval'] })
  localStorage.clear()
  signedIn('ines')
})
afterEach(() => vi.useRealTimers())

describe('an emergency', () => {
  const collapse = { kind: 'emergency' as const, canal: '', payload: { what: 'collapse' } }
  test('says whom to call before anything else, then the first steps in their order and where they are from', () => {
    const { container } = render(<Halted chair={chairAfter([collapse]).chair} />)
    const [first] = container.querySelector('.halted')?.children ?? []
    expect(first?.textContent).toBe('Call the person in the room now.')
    expect([...container.querySelectorAll('.first-steps li')].map((li) => li.textContent)).toEqual([
      'First of all.',
      'Then this.',
    ])
    expect(container.textContent).toContain('Invented B. Common practice')
  })

  test('with a plan that brought nothing along it says so', () => {
    const { chair } = chairAfter([collapse], { at_the_chair: null })
    expect(render(<Halted chair={chair} />).container.textContent).toContain('The person in the room says what to do.')
  })

  test('only a supervisor lifts saline, and may keep it', () => {
    const accident = { ...collapse, payload: { what: 'hypochlorite_accident' } }
    const student = render(<Halted chair={chairAfter([accident]).chair} />)
    expect(student.queryByRole('button', { name: 'Let it go on' })).toBeNull()
    student.unmount()
    signedIn('anouk', 'supervisor')
    const { chair, recorded } = chairAfter([accident])
    const halted = render(<Halted chair={chair} />)
    fireEvent.input(screen.getByLabelText('Reason'), { target: { value: 'Calm again.' } })
    fireEvent.click(screen.getByLabelText('Keep to saline after this'))
    press('Let it go on')
    const calm = { kind: 'resume', reason: 'Calm again.', keep_saline: true, ends: ['e1'] }
    expect(recorded[0]?.payload).toEqual(calm)
    halted.unmount()
    const kept = chairAfter([accident, { kind: 'resume', canal: '', payload: { keep_saline: true } }])
    render(<SalineOnly chair={kept.chair} />)
    fireEvent.input(screen.getByLabelText('Reason'), { target: { value: 'Ends whole.' } })
    press('Lift saline only')
    expect(kept.recorded[0]?.payload).toEqual({ kind: 'resume', reason: 'Ends whole.', keep_saline: false, ends: [] })
  })
})
