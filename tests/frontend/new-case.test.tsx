import { fireEvent, render, screen } from '@testing-library/preact'
import { beforeEach, expect, test } from 'vitest'
import { NewCase } from '@/screens/new-case/new-case'
import { signedIn } from './people'
import { problem, type Sent, serve } from './server'

const molar = {
  iso: '36',
  universal: '19',
  palmer: 'LL6',
  palmer_glyph: '6',
  name: 'Mandibular left first molar',
  primary: false,
  lengths: [
    { root: null, reference_set: 'A', mean_mm: 21, low_mm: 18, high_mm: 24, band: 'least and greatest' },
    { root: null, reference_set: 'B', mean_mm: 21.5, low_mm: null, high_mm: 23, band: 'one standard deviation' },
  ].map((length) => ({ ...length, source: 'Nobody', know: 'from memory' })),
  canals: ['MB', 'ML', 'D'].map((name) => ({ name, root: 'M', kind: 'canal', reference_point: 'B cusp', studies: [] })),
  look_for: [
    {
      name: 'DL',
      root: 'D',
      kind: 'canal',
      reference_point: null,
      studies: [
        {
          share: 0.3,
          low_share: null,
          high_share: null,
          says: 'Invented.',
          source: 'Nobody',
          year: null,
          know: 'from memory',
        },
      ],
    },
  ],
}

let number = 0

beforeEach(() => {
  // Somebody new each time: drafts of the test before are not theirs.
  number += 1
  signedIn(`Student ${number}`)
})

async function filled(
  answer: (sent: Sent) => ReturnType<typeof problem> | { status: number; body: unknown } | 'nothing',
) {
  const seen = serve((sent) => (sent.path === 'compute/tooth' ? { body: molar } : answer(sent)))
  render(<NewCase />)
  fireEvent.input(screen.getByLabelText('Patient alias'), { target: { value: 'Reed' } })
  fireEvent.input(screen.getByLabelText('Tooth'), { target: { value: '36' } })
  expect(await screen.findByText('Mandibular left first molar')).toBeTruthy()
  fireEvent.click(screen.getByLabelText('Extracted tooth'))
  return seen
}

const send = () => fireEvent.click(screen.getByRole('button', { name: 'Open the case' }))
const posted = (seen: Sent[]) => seen.filter((s) => s.path.endsWith('/cases'))

test('the tooth is shown by its full name, with what else to look for and how that is known', async () => {
  await filled(() => 'nothing')
  expect(screen.getByText('ISO 36 · Universal 19 · Palmer LL6')).toBeTruthy()
  expect(screen.getByText('in 30 % of teeth.')).toBeTruthy()
  expect(screen.getAllByText(/Reference value, check/)).toHaveLength(3)
  expect(screen.getByText('3 canals: MB, ML, D')).toBeTruthy()
  expect(screen.getByText('usually 18.0–24.0 mm long')).toBeTruthy()
})

test('a tooth is picked on the arch: its quadrant first, then one of its eight', async () => {
  const seen = serve((sent) => (sent.path === 'compute/tooth' ? { body: molar } : 'nothing'))
  render(<NewCase />)
  const alias = screen.getByLabelText<HTMLInputElement>('Patient alias').value
  expect(alias).toMatch(/^[A-Z][a-z]+ \d{1,2}$/)
  fireEvent.click(screen.getByRole('button', { name: /^Lower left/ }))
  expect(screen.getAllByRole('radio', { name: /^3\d, lower left/ })).toHaveLength(8)
  fireEvent.click(screen.getByRole('radio', { name: '36, lower left first molar' }))
  expect(await screen.findByText('Mandibular left first molar')).toBeTruthy()
  fireEvent.click(screen.getByRole('button', { name: 'All teeth' }))
  expect(document.activeElement?.textContent).toContain('Lower left')
  fireEvent.click(screen.getByLabelText('Training block'))
  send()
  await expect.poll(() => posted(seen).length).toBe(1)
  expect(posted(seen)[0]?.body).toMatchObject({
    patient_alias: alias,
    tooth: { notation: 'iso_3950', designation: '36' },
    setting: 'block',
  })
})

test('a tooth that is typed in another notation is shown on the arch', async () => {
  serve((sent) => (sent.path === 'compute/tooth' ? { body: molar } : 'nothing'))
  render(<NewCase />)
  fireEvent.click(screen.getByLabelText('Universal'))
  fireEvent.input(screen.getByLabelText('Tooth'), { target: { value: '19' } })
  const tooth = await screen.findByRole<HTMLInputElement>('radio', { name: '36, lower left first molar' })
  expect(tooth.checked).toBe(true)
})

test('canals taken away and added are what is sent', async () => {
  const seen = await filled(() => 'nothing')
  fireEvent.click(screen.getByLabelText('MB, measured from B cusp'))
  fireEvent.click(screen.getByLabelText('DL: start with it'))
  send()
  await screen.findByText(/Not sent/)
  expect(posted(seen)[0]?.body).toMatchObject({
    patient_alias: 'Reed',
    tooth: { notation: 'iso_3950', designation: '36' },
    setting: 'extracted',
    canals: ['ML', 'D', 'DL'],
  })
})

test('sending again after no answer sends the same id', async () => {
  const seen = await filled(() => 'nothing')
  send()
  fireEvent.click(await screen.findByRole('button', { name: 'Try again' }))
  await expect.poll(() => posted(seen).length).toBe(2)
  const [first, second] = posted(seen).map((s) => (s.body as { id: string }).id)
  expect(first).toBe(second)
  expect(screen.getByLabelText('Patient alias')).toHaveProperty('value', 'Reed')
})

test('a refusal is said at its field', async () => {
  await filled(() => problem(400, 'not-understood', [{ pointer: '#/patient_alias', detail: 'Too long.' }]))
  send()
  expect(await screen.findByText('Too long.')).toBeTruthy()
  expect(screen.getByLabelText('Patient alias').getAttribute('aria-invalid')).toBe('true')
})

test('what looks like a name is asked about once, and sent again with that said', async () => {
  const seen = await filled((sent) =>
    (sent.body as { alias_is_no_name?: boolean }).alias_is_no_name
      ? 'nothing'
      : problem(422, 'alias-looks-like-a-name', [{ pointer: '#/patient_alias', detail: 'This looks like a name.' }]),
  )
  send()
  expect(await screen.findByText('This looks like a name.')).toBeTruthy()
  fireEvent.click(screen.getByRole('button', { name: 'It is no name: take it' }))
  fireEvent.click(await screen.findByRole('button', { name: 'Try again' }))
  await expect.poll(() => posted(seen).length).toBe(3)
  expect(posted(seen).map((s) => (s.body as { alias_is_no_name?: boolean }).alias_is_no_name)).toEqual([
    undefined,
    true,
    true,
  ])
})

test('an id the server had with other content is renewed, and said so', async () => {
  const seen = await filled(() => problem(409, 'id-used-differently'))
  send()
  expect(await screen.findByText(/had arrived after all/)).toBeTruthy()
  send()
  await expect.poll(() => posted(seen).length).toBe(2)
  const [first, second] = posted(seen).map((s) => (s.body as { id: string }).id)
  expect(first).not.toBe(second)
})

test('nothing is sent while something is lacking', () => {
  const seen = serve(() => 'nothing')
  render(<NewCase />)
  fireEvent.input(screen.getByLabelText('Patient alias'), { target: { value: ' ' } })
  send()
  expect(screen.getAllByText('Fill this in.')).toHaveLength(3)
  expect(seen).toEqual([])
})
