import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { Plan } from '@/api/shapes'
import { adviceIn } from '@/panels/emergency/at-hand'
import { Trouble } from '@/panels/emergency/trouble'
import { Halted } from '@/screens/chair/halted'
import { signedIn } from './people'
import { chairAfter } from './sample-work'

beforeEach(() => signedIn('ines'))

describe('what cannot happen in a setting', () => {
  const clinic = { about: 'emergency' as const, source: 'Invented', know: 'from memory', settings: ['clinic' as const] }
  const advice = [
    { ...clinic, key: 'collapse', says: 'First of all.' },
    { ...clinic, key: 'instrument_separated', says: 'Measure the piece.', settings: [] },
    { ...clinic, key: 'instrument_separated', says: 'The patient is told.' },
    { ...clinic, about: 'pause' as const, key: 'sensitivity', says: 'Wait a while.' },
  ]
  const under = (setting: Plan['setting']) => {
    const { chair } = chairAfter([], { setting, at_the_chair: { advice, contacts: [] } })
    const { unmount } = render(<Trouble chair={chair} canal="MB" pausable />)
    fireEvent.click(screen.getByRole('button', { name: 'Problem' }))
    const offered = [...document.querySelectorAll('.ways button')].map((button) => button.textContent)
    unmount()
    return offered
  }

  test('is not offered without a patient; what the plan says nothing of is', () => {
    expect(under('clinic')).toEqual(expect.arrayContaining(['The patient collapses', 'It hurts']))
    for (const setting of ['extracted', 'block'] as const) {
      const offered = under(setting)
      expect(offered).not.toContain('The patient collapses')
      expect(offered).not.toContain('It hurts')
      expect(offered).toEqual(
        expect.arrayContaining(['An instrument has separated', 'Sudden bleeding', 'Something else']),
      )
    }
  })

  test.each(['Correct it', 'Something else has happened'])('nor where one was told, under %s', (button) => {
    const event = { kind: 'emergency' as const, canal: '', payload: { what: 'perforation_suspected' } }
    const { chair } = chairAfter([event], { setting: 'extracted', at_the_chair: { advice, contacts: [] } })
    render(<Halted chair={chair} />)
    fireEvent.click(screen.getByRole('button', { name: button }))
    const labels = [...document.querySelectorAll('.ways button')].map((button) => button.textContent)
    expect(labels).toContain('An instrument has separated')
    expect(labels).not.toContain('The patient collapses')
  })

  test('has no first steps there; what was told all the same has its own', () => {
    const stepsOf = (what: string) => {
      const emergency = { kind: 'emergency' as const, canal: '', payload: { what } }
      const { chair } = chairAfter([emergency], { at_the_chair: { advice, contacts: [] } })
      return adviceIn(chair).flatMap((sentence) => (sentence.key === what ? [sentence.says] : []))
    }
    expect(stepsOf('instrument_separated')).toEqual(['Measure the piece.'])
    expect(stepsOf('collapse')).toEqual(['First of all.'])
  })
})

test('a double tap that closes what happened does not open it again, and later it opens at once', () => {
  vi.useFakeTimers()
  render(<Trouble chair={chairAfter([]).chair} canal="MB" pausable />)
  const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }))
  press('Problem')
  press('Close')
  vi.advanceTimersByTime(350)
  press('Problem')
  expect(screen.queryByRole('dialog')).toBeNull()
  vi.advanceTimersByTime(100)
  press('Problem')
  expect(screen.getByRole('dialog')).toBeTruthy()
})
