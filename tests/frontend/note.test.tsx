import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { Note } from '@/screens/chair/note'
import type { Chair } from '@/store/chair/chair'
import { signedIn } from './people'
import { chairAfter } from './sample-chair'

test('a note is of the tooth; what was typed stays until it is kept', async () => {
  signedIn('ines')
  const made = chairAfter([])
  const chair = { ...made.chair, version: { case_id: 'k1' } } as unknown as Chair
  const { unmount } = render(<Note chair={chair} />)
  const keep = () => screen.getByRole('button', { name: 'Keep the note', hidden: true }) as HTMLButtonElement
  const note = () => screen.getByLabelText('Note') as HTMLTextAreaElement
  expect(keep().disabled).toBe(true)
  fireEvent.input(note(), { target: { value: ' A second orifice, distal. ' } })
  await waitFor(() => expect(keep().disabled).toBe(false))
  unmount()

  render(<Note chair={chair} />)
  await waitFor(() => expect(note().value).toBe(' A second orifice, distal. '))
  fireEvent.click(keep())
  await waitFor(() => expect(note().value).toBe(''))
  expect(made.record.mock.calls).toEqual([['', '', { kind: 'note', text: 'A second orifice, distal.' }]])
})
