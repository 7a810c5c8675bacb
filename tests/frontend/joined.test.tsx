import { render, screen } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import { NowCard } from '@/screens/chair/now-card'
import { signedIn } from './people'
import { chairAfter, joinedCanals, left } from './sample-work'

const WORKED = [left('shape', 'short', { depth_um: 12_000 }), left('rinse', 'done'), left('small', 'reached')]
const SAYS = 'MB goes to the common end: it is prepared first.'

/** The card of the canal that joins, after these events in the main one. */
function cardAfter(events: Parameters<typeof chairAfter>[0]) {
  const { chair } = chairAfter(events, { canals: joinedCanals() })
  const canal = chair.plan.canals.find((planned) => planned.canal === 'DB')
  const course = chair.course.canals.DB
  if (!canal || !course) throw new Error('DB')
  render(<NowCard chair={chair} canal={canal} course={course} />)
  return course
}

beforeEach(() => signedIn('ines'))

test('a canal that joins another says what it waits for', () => {
  expect(cardAfter(WORKED).state).toBe('waits')
  expect(screen.getByText(SAYS)).toBeTruthy()
})

test('it is worked once the other has come so far', () => {
  expect(cardAfter([...WORKED, left('edta', 'done')]).state).toBe('open')
  expect(screen.queryByText(SAYS)).toBeNull()
})
