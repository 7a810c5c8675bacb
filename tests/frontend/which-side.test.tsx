import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { expect, test, vi } from 'vitest'
import * as calls from '@/api/markings'
import { WhichSide } from '@/screens/marks/which-side'

test('the way of the tube and of the line are asked of the server, and its answer is said', async () => {
  const asked = vi.spyOn(calls, 'readTwoViews').mockResolvedValue({
    one_is: 'lingual',
    why: 'The tube moved to the mesial and the line moved with it.',
    in_space_deg: null,
    in_space: null,
  })
  render(<WhichSide />)
  fireEvent.click(screen.getByText('Which canal is which?'))
  const [tube, line] = screen.getAllByRole('radio', { name: 'mesial' })
  fireEvent.click(tube as HTMLElement)
  expect(asked).not.toHaveBeenCalled()
  fireEvent.click(line as HTMLElement)
  expect(await screen.findByText('Lingual.')).toBeTruthy()
  expect(asked).toHaveBeenCalledWith({ shift: { tube: 'mesial', first_mm: 0, second_mm: 1 }, bends: null })
  fireEvent.click(screen.getByRole('radio', { name: 'hardly moved' }))
  await waitFor(() =>
    expect(asked).toHaveBeenLastCalledWith({ shift: { tube: 'mesial', first_mm: 0, second_mm: 0 }, bends: null }),
  )
})
