import { fireEvent, render, screen, within } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { CanalShown, CaseShown } from '@/api/shapes'
import { toothBy } from '@/panels/readings/reading-fields'
import { type Key, pressed } from '@/parts/keypad/keypad'
import { apart } from '@/parts/reading-ruler/reading-ruler'
import { Measure } from '@/screens/case/measure/measure'
import { signedIn } from './people'
import { type Sent, serve } from './server'
import { NEVER_MS } from './until'

const typed = (keys: string) => ([...keys] as Key[]).reduce(pressed, '')

describe('keys', () => {
  test.each([
    ['19½', '19.5'],
    ['½', '0.5'],
    ['19½½', '19.5'],
    ['19½⌫', '19'],
    ['19.⌫', '19'],
    ['19.25⌫', '19.2'],
    ['.5', '0.5'],
    ['19..5', '19.5'],
    ['1234', '123'],
    ['19.256', '19.25'],
    ['⌫', ''],
  ])('%s is %s', (keys, comes_to) => {
    expect(typed(keys)).toBe(comes_to)
  })
})

test('readings are compared as where each says the tooth ends, by hand', () => {
  const same = { reference_point: '', after_flaring: false, interval: null }
  expect(
    [
      { ...same, method: 'pre_operative_image', tooth_mm: 20.5 } as const,
      { ...same, method: 'ratio', instrument_mm: 18, instrument_on_image_mm: 20, tooth_on_image_mm: 22 } as const,
      { ...same, method: 'confirming_image', set_mm: 19, tip_short_mm: -0.5 } as const,
      { ...same, method: 'apex_locator', read_mm: 20, repeat_mm: 19.5, mark: 'apex', stable: true } as const,
      { ...same, method: 'direct_sight', seen_mm: 20 } as const,
    ].map(toothBy),
  ).toEqual([20.5, 19.8, 18.5, 19.5, 20])
  expect(apart([{ says: 'a', mm: 20.5 }])).toBeUndefined()
  expect(
    apart([
      { says: 'a', mm: 20.5 },
      { says: 'b', mm: 19.8 },
      { says: 'c', mm: 20.1 },
    ]),
  ).toBe('0.7')
})

const canal = (name: string) =>
  ({
    id: name,
    name,
    root: name,
    reference_point: 'cusp',
    readings: [],
    junctions: [],
    length: null,
  }) as unknown as CanalShown

const molar = {
  id: 'case',
  programme_id: 'here',
  tooth: { iso: '26' },
  setting: 'extracted',
  roots: [],
  canals: ['MB', 'P'].map(canal),
} as unknown as CaseShown

// A programme's own: none is the published one.
const figures = [
  { key: 'lengths.agree_within', value: 0.4 },
  { key: 'lengths.estimate_within', value: 1.5 },
  { key: 'set_back.none', value: 0.9 },
  { key: 'set_back.seen_at_foramen', value: 0.7 },
  { key: 'allowance.image', value: 1.1 },
]

const lengths = [{ root: null, low_mm: 17, high_mm: 24 }]

let number = 0

beforeEach(() => {
  number += 1
  signedIn(`Measurer ${number}`)
})

function opened(of = molar) {
  const seen = serve(({ path, method }) => {
    if (path === 'teeth/26') return { body: { iso: '26', lengths } }
    if (path === 'programmes/here/figures') return { body: { results: figures } }
    return method === 'POST' ? { status: 201, body: { id: 'reading' } } : { body: molar }
  })
  render(<Measure of={of} onClose={() => undefined} onMeasured={() => undefined} />)
  return seen
}

const key = (name: string) => fireEvent.click(screen.getByRole('button', { name }))
const taken = (seen: Sent[]) => seen.filter(({ path }) => path.endsWith('/readings'))
/** As long as a touch is not taken yet. */
const ready = async (name: string) => {
  const button = screen.getByRole('button', { name })
  await expect.poll(() => button.getAttribute('aria-disabled'), { timeout: NEVER_MS }).toBe(null)
  return button
}

test('a double tap on what keeps the number sends it once and goes on by one canal', async () => {
  const seen = opened()
  for (const name of ['2', '0', 'and a half']) key(name)
  expect(screen.getByText(/^Image 20\.5/)).toBeTruthy()
  const keeps = await ready('Keep, next: P')
  fireEvent.click(keeps)
  fireEvent.click(keeps)
  expect(await screen.findByRole('heading', { name: 'P, from cusp' })).toBeTruthy()
  fireEvent.click(screen.getByRole('button', { name: /^Keep(,| and)/ }))
  expect(taken(seen).map(({ path, body }) => [path, (body as { reading: object }).reading])).toEqual([
    [
      'canals/MB/readings',
      { method: 'pre_operative_image', tooth_mm: 20.5, reference_point: 'cusp', after_flaring: false },
    ],
  ])
  expect(screen.queryByText(/Type a number/)).toBe(null)
})

test.each([
  ['an estimate', [{ method: 'pre_operative_image', tooth_mm: 20 }], 'agrees at 17.4–20.4'],
  [
    'measurements, beside their estimate',
    [
      { method: 'pre_operative_image', tooth_mm: 22 },
      { method: 'direct_sight', seen_mm: 20 },
      { method: 'confirming_image', set_mm: 19, tip_short_mm: 1.2 },
    ],
    'agrees at 18.9–19.7',
  ],
])('what agrees with %s is drawn as wide as the programme says', async (_, readings, says) => {
  const taken = readings.map((reading) => ({
    reading: { ...reading, reference_point: 'cusp', after_flaring: false },
    struck: null,
  }))
  const canals = molar.canals.map((each) => ({ ...each, resorption: 'none', reference_point: 'cusp', readings: taken }))
  opened({ ...molar, canals } as unknown as CaseShown)
  await expect.poll(() => screen.queryByText(new RegExp(says))).toBeTruthy()
  expect(document.querySelectorAll('[data-drawn=agrees]')).toHaveLength(1)
})

test('an unusual number is asked about once, with the range', async () => {
  const seen = opened()
  await expect.poll(() => screen.queryByText(/tooth usually 17.0–24.0 mm/)).toBeTruthy()
  for (const name of ['2', '7']) key(name)
  fireEvent.click(await ready('Keep, next: P'))
  expect(screen.getByText('27.0 mm? This tooth is usually 17.0–24.0 mm long.')).toBeTruthy()
  expect(taken(seen)).toEqual([])
  fireEvent.click(await ready('Keep it, next: P'))
  await expect.poll(() => taken(seen).length).toBe(1)
})

test('how it was taken is kept from canal to canal; a second number comes before keeping', async () => {
  opened()
  fireEvent.click(screen.getByRole('radio', { name: 'Apex locator' }))
  fireEvent.click(screen.getByRole('radio', { name: 'apex' }))
  for (const name of ['2', '0']) key(name)
  fireEvent.click(await ready('Next number'))
  expect(document.activeElement?.getAttribute('data-field')).toBe('repeat_mm')
  for (const name of ['2', '0']) key(name)
  fireEvent.click(await ready('Keep, next: P'))
  expect(await screen.findByRole('heading', { name: 'P, from cusp' })).toBeTruthy()
  const chosen = within(screen.getByRole('dialog')).getAllByRole<HTMLInputElement>('radio', { checked: true })
  expect(chosen.map((radio) => radio.getAttribute('aria-label') ?? radio.value)).toEqual([
    'P, not measured',
    'Apex locator',
    'apex',
  ])
})
