import { render, screen } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import { Dock } from '@/screens/chair/dock'
import { Ending, isOver } from '@/screens/chair/ending'
import { signedIn } from './people'
import { chairAfter, left } from './sample-work'

const finished = (canal: string, deepest: object) => [
  left('shape', 'short', { depth_um: 12_000 }, canal),
  left('rinse', 'done', { irrigant: 'sodium_hypochlorite', volume_ml: 2 }, canal),
  left('small', 'reached', {}, canal),
  left('edta', 'done', { irrigant: 'edta', volume_ml: 5 }, canal),
  left('again', 'short', deepest, canal),
]

beforeEach(() => signedIn('ines'))

test('is there once every canal has come to its end', () => {
  expect(isOver(chairAfter([]).chair)).toBe(false)
  expect(isOver(chairAfter(finished('MB', { depth_um: 18_000 })).chair)).toBe(false)
})

test('says of each canal what was planned, what was done and what is left, and what comes next', () => {
  // MB's last one stayed half a millimetre short, where the small one had been at its stop.
  const { chair } = chairAfter([...finished('MB', { depth_um: 18_000 }), ...finished('DB', { depth_um: 17_000 })])
  expect(isOver(chair)).toBe(true)
  const [canal] = chair.plan.canals
  const course = chair.course.canals.MB
  if (!canal || !course) throw new Error('MB')
  render(
    <>
      <Ending chair={chair} canals={chair.plan.canals} />
      <Dock
        chair={chair}
        canal={canal}
        course={course}
        tip={{ depth_um: undefined, onDepth: () => undefined }}
        onTurnedBack={() => undefined}
      />
    </>,
  )
  const rows = screen.getAllByRole('row').map((row) => [...row.children].map((cell) => cell.textContent))
  expect(rows).toEqual([
    ['Canal', 'Planned', 'Done', 'Left'],
    ['MB', '18.540/.03', '18.5 · 10/.027 ml', 'as planned'],
    ['DB', '17.040/.03', '17.0 · 35/.037 ml', 'as planned'],
  ])
  expect(screen.getByRole('link', { name: 'Close for today' }).className).toContain('main')
  expect(screen.getByRole('link', { name: 'See the record' })).toBeTruthy()
  expect(screen.getByRole('button', { name: 'Problem' })).toBeTruthy()
})
