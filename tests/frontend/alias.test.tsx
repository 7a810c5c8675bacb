import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import type { CaseShown } from '@/api/shapes'
import { Alias } from '@/screens/case/alias'
import { signedIn } from './people'
import { problem, serve } from './server'

const of = { id: 'k1', patient_alias: 'Anna Kellermann', revision: 3 } as unknown as CaseShown

beforeEach(() => signedIn('Priya'))

function typed(alias: string) {
  render(<Alias of={of} />)
  fireEvent.input(screen.getByRole('textbox', { name: 'Instead of Anna Kellermann', hidden: true }), {
    target: { value: alias },
  })
  fireEvent.click(screen.getByRole('button', { name: 'Put this in its place', hidden: true }))
}

test('another alias is sent alone, with the revision that was seen', async () => {
  const sent = serve(() => 'nothing')
  typed(' Reed 12 ')
  expect(await screen.findByText(/Not sent/)).toBeTruthy()
  expect(sent.filter((request) => request.method === 'PATCH').map((request) => request.body)).toEqual([
    { patient_alias: 'Reed 12' },
  ])
})

test('why one is refused stands at the field', async () => {
  serve(() => problem(422, 'alias-refused', [{ pointer: '#/patient_alias', detail: 'This looks like a date.' }]))
  typed('12.3.1987')
  expect(await screen.findByText('This looks like a date.')).toBeTruthy()
  expect(screen.queryByRole('button', { name: 'It is no name: take it', hidden: true })).toBeNull()
})

test('what looks like a name is asked about', async () => {
  const sent = serve(() =>
    problem(422, 'alias-looks-like-a-name', [{ pointer: '#/patient_alias', detail: 'This looks like a name.' }]),
  )
  typed('Reed Heron')
  fireEvent.click(await screen.findByRole('button', { name: 'It is no name: take it', hidden: true }))
  await expect.poll(() => sent.length).toBe(2)
  expect(sent[1]?.body).toEqual({ patient_alias: 'Reed Heron', alias_is_no_name: true })
})

test('nothing is sent while nothing is typed', () => {
  const sent = serve(() => 'nothing')
  typed('  ')
  expect(sent).toEqual([])
})
