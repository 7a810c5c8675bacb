import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, expect, test, vi } from 'vitest'
import type { CanalPlan, SheetStep } from '@/api/shapes'
import { AskForSignOff } from '@/screens/chair/hold-point'
import { ImageAnswers } from '@/screens/chair/image-answers'
import type { Chair } from '@/store/chair/chair'
import { imageOfStep } from '@/store/chair/image-of-step'
import { signedIn } from './people'
import { chairAfter } from './sample-chair'
import type { Written } from './sample-events'

const IMAGE: Written = { kind: 'image', canal: 'MB1', payload: { image_id: 'i1' } }
const NODE = { id: 'image', phase: 'length', action: 'image', exits: { done: 'word' } } as unknown as SheetStep

function answers(events: readonly Written[]) {
  const { chair, record } = chairAfter(events, 'extracted')
  const canal = chair.plan.canals[0] as CanalPlan
  const course = chair.course.canals.MB1
  if (!course) throw new Error('no canal')
  render(<ImageAnswers chair={chair} canal={canal} course={course} node={NODE} />)
  return record
}

beforeEach(() => signedIn('Ines'))

test('with its image the step names it', () => {
  const record = answers([IMAGE])
  fireEvent.click(screen.getByRole('button', { name: 'Image taken' }))
  expect(record.mock.lastCall?.[2]).toMatchObject({ kind: 'step', exit: 'done', image_id: 'i1' })
  expect(screen.queryByRole('button', { name: 'On film' })).toBeNull()
})

test('the camera lies where a step is answered, and what a second touch hits records nothing', () => {
  answers([])
  const camera = screen.getByLabelText('Take a photo').closest('label')
  expect(camera?.parentElement?.classList).toContain('step-answers')
  expect(document.querySelectorAll('.step-answers > button')).toHaveLength(0)
})

test.each([
  ['No sensor', 'no_sensor'],
  ['On film', 'film'],
  ['Image elsewhere', 'image_elsewhere'],
])('without one it says why in one touch: %s', (name, no_image) => {
  const record = answers([])
  expect(screen.queryByRole('button', { name: 'Image taken' })).toBeNull()
  fireEvent.click(screen.getByRole('button', { name }))
  expect(record.mock.lastCall?.[2]).toMatchObject({ kind: 'step', exit: 'done', no_image })
})

test.each([
  ['the last one counts', [IMAGE, { ...IMAGE, payload: { image_id: 'i2' } }], 'i2'],
  ['one of another canal does not', [{ ...IMAGE, canal: 'MB2' }], undefined],
  ['one that was taken back does not', [IMAGE, { kind: 'undo', canal: 'MB1', payload: { undoes: '1' } }], undefined],
  [
    'one of an earlier step does not',
    [IMAGE, { canal: 'MB1', node: 'shape', payload: { exit: 'reached' } }],
    undefined,
  ],
] as const)('of the images %s', (_, events, id) => {
  expect(imageOfStep(chairAfter(events as readonly Written[], 'extracted').chair, 'MB1')).toBe(id)
})

test.each([
  ['estimated', false],
  ['settled', true],
] as const)('at a hold point on a length that is %s the sign-off is asked for: %s', (state, offered) => {
  const node = { kind: 'do', id: 'word', action: 'sign_off', hold_point: 'length', exits: {} } as unknown as SheetStep
  const canal = { state: 'hold_point', walk: { node }, asking: null, coming: null, reopened: new Set() }
  const chair = {
    caseId: 'k1',
    plan: { canals: [{ canal: 'MB1', length: { state }, run_sheet: { nodes: {} } }] },
    course: { canals: { MB1: canal }, undone: new Set(), outOfCourse: {} },
    events: [],
    treatment: { events: [] },
    record: vi.fn(),
  } as unknown as Chair
  render(<AskForSignOff chair={chair} canal="MB1" node={node} />)
  expect(screen.queryByRole('button', { name: 'Ask for sign-off' }) !== null).toBe(offered)
  // A supervisor at the chair may let it pass in spite.
  expect(screen.getByRole('button', { name: 'The supervisor is here' })).toBeTruthy()
})
