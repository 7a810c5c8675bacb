import { describe, expect, test } from 'vitest'
import type { Asked, Kit, Technique, VersionShown } from '@/api/shapes'
import { firstAsked, seriesTapers, sizesOf, withCanal, withKit } from '@/panels/plan/asked'
import { chosenCanals, emptyCase, percent } from '@/screens/new-case/new-case-fields'
import { emptyReview, saysSomething, toReview, unsaid } from '@/screens/review/review-fields'

const choice = {
  length_mm: 25,
  cutting_part_mm: 16,
  largest_flute_mm: null,
  speed_rpm: null,
  torque_ncm: null,
  diameters: [],
  uses: 0,
  most_uses: null,
}
const kit: Kit = {
  id: 'k1',
  name: 'Sample kit',
  filling: [],
  needles: [
    { gauge: 27, tip: 'open' },
    { gauge: 31, tip: 'side_vented' },
  ],
  instruments: [
    { ...choice, size: 40, taper: 3, motion: 'continuous', use: 'shaping' },
    { ...choice, size: 25, taper: 5, motion: 'continuous', use: 'shaping' },
    { ...choice, size: 25, taper: 2, motion: 'hand', use: 'hand' },
    { ...choice, size: 70, taper: 9, motion: 'continuous', use: 'coronal' },
  ],
}
const technique = { key: 'crown-down' } as Technique
const asked: Asked = { kit_id: 'k1', technique: 'crown-down', choices: { needle: { gauge: 31, tip: 'side_vented' } } }

describe('a plan begins with', () => {
  test('what the version that stands asked for', () => {
    const last = { kit_id: 'k9', technique: 'step-back', choices: asked.choices } as VersionShown
    expect(firstAsked(last, [kit], [technique])).toEqual({
      kit_id: 'k9',
      technique: 'step-back',
      choices: asked.choices,
    })
  })

  test('else a side-vented needle and water', () => {
    expect(firstAsked(undefined, [kit], [technique])?.choices).toMatchObject({
      needle: { gauge: 31, tip: 'side_vented' },
      irrigant: 'water',
    })
  })

  test('nothing where the programme has no kit', () => {
    expect(firstAsked(undefined, [], [technique])).toBeUndefined()
  })
})

describe('a choice', () => {
  test('for one canal leaves the others', () => {
    const both = withCanal(withCanal(asked, 'MB', { final_size: 35 }), 'D', { final_size: 40 })
    expect(withCanal(both, 'MB', { reason: 'Oval.' }).choices.canals).toEqual([
      { canal: 'D', final_size: 40 },
      { canal: 'MB', final_size: 35, reason: 'Oval.' },
    ])
    expect(withCanal(both, 'MB', { final_size: null, reason: '' }).choices.canals).toEqual([
      { canal: 'D', final_size: 40 },
    ])
  })

  test('of another kit keeps the needle it has too, and drops a taper it has not', () => {
    const tapered = { ...asked, choices: { ...asked.choices, series_taper: 4 } }
    const next = withKit(tapered, { ...kit, id: 'k2' })
    expect(next).toEqual({
      kit_id: 'k2',
      technique: 'crown-down',
      choices: { needle: { gauge: 31, tip: 'side_vented' } },
    })
    const open = withKit(asked, { ...kit, needles: [{ gauge: 27, tip: 'open' }] })
    expect(open.choices.needle).toEqual({ gauge: 27, tip: 'open' })
  })

  test('of a final size is among what shapes or gauges; of a taper among the series', () => {
    expect(sizesOf(kit)).toEqual([25, 40])
    expect(seriesTapers(kit)).toEqual([3, 5])
  })
})

describe('the canals of a new case', () => {
  const offer = (name: string) => ({ name }) as never
  const tooth = { canals: [offer('MB'), offer('D')], look_for: [offer('MM'), offer('DL')] } as never
  test('are the usual ones, less what is taken away, and what is added', () => {
    const fields = { ...emptyCase('id'), without: ['MB'], with: ['DL'] }
    expect(chosenCanals(fields, tooth)).toEqual(['D', 'DL'])
  })

  test.each([
    [null, 0.12, null, '12\u00a0%'],
    [0.1, 0.25, 0.4, '25\u00a0% (10–40\u00a0%)'],
    [0.3, null, 0.6, '30–60\u00a0%'],
    [null, 0.004, null, 'under 1\u00a0%'],
    [null, null, null, ''],
  ])('prevalence %s %s %s is said as %s', (low, share, high, says) => {
    expect(percent(low, share, high)).toBe(says)
  })
})

describe('a review', () => {
  test('with nothing but blanks says nothing', () => {
    expect(saysSomething({ ...emptyReview('r'), note: ' ', returned: [], remarks: { MB: '\n' } })).toBe(false)
    expect(saysSomething({ ...emptyReview('r'), remarks: { MB: 'Shorter.' } })).toBe(true)
  })

  test('sends only remarks that say something', () => {
    const fields = { returned: [], id: 'r', note: ' Good. ', remarks: { MB: ' Shorter. ', D: ' ' } }
    expect(toReview(fields, 'returned')).toEqual({
      id: 'r',
      decision: 'returned',
      note: 'Good.',
      remarks: [{ canal: 'MB', text: 'Shorter.', returned: false }],
      acknowledged: [],
      own_lengths: [],
    })
  })

  test('returns canals alone only with an approval, and not without a word', () => {
    const fields = { ...emptyReview('r'), remarks: { MB: 'Shorter.', D: 'Good.' }, returned: ['MB', 'P'] }
    expect(toReview(fields, 'approved').remarks).toEqual([
      { canal: 'MB', text: 'Shorter.', returned: true },
      { canal: 'D', text: 'Good.', returned: false },
    ])
    expect(toReview(fields, 'returned').remarks?.every(({ returned }) => !returned)).toBe(true)
    expect(unsaid(fields)).toEqual(['P'])
  })
})
