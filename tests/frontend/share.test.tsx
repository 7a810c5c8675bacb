import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, expect, test, vi } from 'vitest'
import { Share } from '@/screens/share/share'
import { personId } from '@/store/session/session'
import { words } from '@/words/en'
import { signedIn } from './people'
import { serve } from './server'

const tooth = { iso: '26' }
const row = (id: string, patient_alias: string, more: object = {}) => ({
  id,
  case_id: id,
  patient_alias,
  tooth,
  ...more,
})

/** One photo was shared, and waits where the worker has put it. */
beforeEach(() => {
  const match = async () => new Response(new Blob(['x']))
  vi.stubGlobal('caches', { open: async () => ({ keys: async () => ['/shared/1'], match, delete: async () => true }) })
})

test('a student puts it to one of their own cases', async () => {
  await signedIn('Ines')
  serve(({ path }) => ({ body: path.endsWith('/cases') ? { results: [row('c1', 'Reed 12')], next: null } : {} }))
  render(<Share />)
  expect(await screen.findByRole('button', { name: '26 · Reed 12' })).toBeTruthy()
})

test.each(['supervisor', 'coordinator'] as const)(
  'a %s puts it to a case taken over, and to no other',
  async (role) => {
    await signedIn(`Vale the ${role}`, role)
    serve(({ path }) => ({
      body: path.endsWith('/running-work')
        ? {
            results: [
              row('c1', 'Mine', { taken_over: { id: personId(), name: 'Vale' } }),
              row('c2', 'Taken by another', { taken_over: { id: 'x', name: 'Amari' } }),
              row('c3', 'Nobody’s', { taken_over: null }),
            ],
            next: null,
          }
        : { results: [row('c4', 'Every case')], next: null },
    }))
    render(<Share />)
    expect(await screen.findByRole('button', { name: '26 · Mine' })).toBeTruthy()
    const choices = screen.getAllByRole('button').filter((button) => !button.matches('.image-tile'))
    expect(choices.map((button) => button.textContent)).toEqual(['26 · Mine', 'To none: throw them away'])
  },
)

test('what was shared is shown, and opens to be looked at before it is put anywhere', async () => {
  await signedIn('Ines')
  serve(({ path }) => ({ body: path.endsWith('/cases') ? { results: [row('c1', 'Reed 12')], next: null } : {} }))
  const { container, unmount } = render(<Share />)
  const shown = await screen.findByRole('button', { name: 'Open the image that was shared' })
  const address = container.querySelector('.image-tile img')?.getAttribute('src')
  expect(address).toMatch(/^blob:/)
  fireEvent.click(shown)
  expect(await screen.findByRole('dialog', { name: 'the image that was shared', hidden: true })).toBeTruthy()
  const gone = vi.spyOn(URL, 'revokeObjectURL')
  unmount()
  await waitFor(() => expect(gone).toHaveBeenCalledWith(address))
})

test('of a kind that this phone cannot draw it says so', async () => {
  await signedIn('Ines')
  serve(() => ({ body: { results: [], next: null } }))
  const { container } = render(<Share />)
  await screen.findByRole('button', { name: 'Open the image that was shared' })
  const picture = container.querySelector('.image-tile img')
  if (picture) fireEvent.error(picture)
  expect(await screen.findByText(words.images.noPicture)).toBeTruthy()
})

test('where there is none it says who sends images', async () => {
  await signedIn('Vale without a case', 'supervisor')
  serve(() => ({ body: { results: [], next: null } }))
  render(<Share />)
  expect(await screen.findByText(/No case takes images from you now/)).toBeTruthy()
})
