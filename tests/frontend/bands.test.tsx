import { render, screen } from '@testing-library/preact'
import { describe, expect, test } from 'vitest'
import type {
  Bands,
  CanalPlan,
  EventPayload,
  ExpectedStep,
  Plan,
  RunSheet,
  SheetStep,
  Treatment,
  VersionShown,
} from '@/api/shapes'
import { LastDepth } from '@/screens/chair/bands'
import type { Chair } from '@/store/chair/chair'
import { expectedRest, judged } from '@/store/chair/expected'
import { CaseState } from '@/walk/course'
import cases from '../shared/depths-judged.json'
import { eventOf, inForce } from './sample-events'
import { forecast } from './sample-expected'

const HASH = 'h'
const STOP_UM = 18_500

function step(id: string, instrument: string, to: string): SheetStep {
  const nothing = { stop_um: STOP_UM, shorter_than: null, hold_point: null, irrigant: null, volume_ml: null }
  const exits = { reached: to, short: to }
  const more = {
    phase: 'p',
    target: 'to_resistance',
    needle_at_most_um: null,
    say: '',
    waits_for: [] as never[],
    kind: 'do',
  } as const
  return { id, action: 'instrument', instrument, exits, ...nothing, ...more }
}

/** One hand instrument, then the same rotary one twice: as the sample plan expects MB to be worked. */
const SHEET: RunSheet = {
  canal: 'MB',
  start: 'a',
  nodes: {
    a: step('a', '10/.02 hand', 'b'),
    b: step('b', '35/.03 continuous', 'more'),
    more: {
      id: 'more',
      phase: 'p',
      question: { test: 'passes_below', node: 'b', n: 2 },
      exits: { yes: 'b', no: 'end' },
      kind: 'ask',
    },
    end: { id: 'end', outcome: 'finished', say: '', kind: 'end' },
  },
  walked_before: null,
  schema_version: 1,
}

/** MB has been worked to these depths; `unsent` of them are still on the phone. */
function chairAt(depths_um: readonly number[], unsent = 0, setting: Plan['setting'] = 'extracted'): Chair {
  const plan = { ...forecast(), setting }
  const events = depths_um.map((depth_um, i) =>
    eventOf({
      id: String(i),
      plan: HASH,
      canal: 'MB',
      node: i === 0 ? 'a' : 'b',
      payload: { exit: 'short', depth_um, stop_um: STOP_UM },
    }),
  )
  const treatment = { position: depths_um.length - unsent } as Treatment
  return {
    caseId: 'c',
    version: { hash: HASH } as VersionShown,
    plan,
    course: new CaseState({ [HASH]: { MB: SHEET } }, [inForce(HASH), ...events], 'extracted'),
    events,
    waiting: Array.from({ length: unsent }) as unknown as Chair['waiting'],
    treatment,
    record: (_canal: string, _node: string, _told: EventPayload) => Promise.resolve(true),
  } as Chair
}

function toldOf(chair: Chair, position: number): Bands {
  const expectation = chair.plan.canals[0]?.expectation
  if (!expectation) throw new Error('the sample has bands')
  return { plan_hash: HASH, position, canals: [{ canal: 'MB', done: position, expectation, last: null }] }
}

describe('what is expected of the rest of the work', () => {
  test('is what the server says once it knows everything', () => {
    const chair = chairAt([18_500])
    const bands = toldOf(chair, 1)
    expect(expectedRest(chair, bands, 5)).toEqual({ canals: bands.canals, from: 'server' })
  })

  test('is the plan’s, with what was recorded laid over it, while the server has said nothing', () => {
    const { canals, from } = expectedRest(chairAt([18_500, 15_000], 2), undefined, undefined)
    expect(from).toBe('plan')
    expect(canals[0]?.done).toBe(2)
    expect(canals[0]?.expectation.steps[1]).toMatchObject({ depth_mm: 15, felt: 'as_expected', low_mm: null })
    expect(canals[0]?.expectation.steps[2]).toMatchObject({ pass_number: 2, depth_mm: 18.5, felt: null, low_mm: 17 })
    expect(canals[0]?.last).toMatchObject({ node: 'b', pass_number: 1, depth_mm: 15, low_mm: 14.4, high_mm: 16 })
  })

  test('is what the server said last, with its time, while it cannot be asked', () => {
    const chair = chairAt([18_500, 14_000], 1)
    const { from, at, canals } = expectedRest(chair, toldOf(chair, 1), 5)
    expect([from, at]).toEqual(['kept', 5])
    expect(canals[0]?.last?.felt).toBe('shorter')
  })

  test('of another version says nothing of this one', () => {
    const chair = chairAt([18_500])
    expect(expectedRest(chair, { ...toldOf(chair, 1), plan_hash: 'other' }, 5).from).toBe('plan')
  })
})

describe('a recorded depth', () => {
  test.each(cases)('$says', ({ expected, depths }) => {
    const step = { short_below_mm: undefined, deep_above_mm: undefined, ...expected } as unknown as ExpectedStep
    expect(depths.map(([depth_mm]) => [depth_mm, judged(step, Number(depth_mm))])).toEqual(depths)
  })

  test('is judged once: what came after it and what the server says of the others change nothing', () => {
    const first = expectedRest(chairAt([18_500, 13_000], 1), undefined, undefined)
    const chair = chairAt([18_500, 13_000, 18_000], 1)
    const bands = { ...toldOf(chair, 2), canals: [...first.canals] }
    const felt = (ahead: typeof first) => ahead.canals[0]?.expectation.steps.map((step) => step.felt)
    expect(felt(first)).toEqual([null, 'shorter', null])
    expect(felt(expectedRest(chair, bands, 5))).toEqual([null, 'shorter', 'as_expected'])
  })
})

/** The same chair with limits about the second step's band, and whatever else is to be of it. */
function withLimits(chair: Chair, more: Partial<ExpectedStep> = {}): Chair {
  const of = (step: ExpectedStep) =>
    step.low_mm === null ? step : { ...step, short_below_mm: 12, deep_above_mm: 17.5 }
  const canals = chair.plan.canals.map((canal) => ({
    ...canal,
    expectation: canal.expectation && {
      ...canal.expectation,
      steps: canal.expectation.steps.map((step) => ({ ...of(step), ...more })),
    },
  }))
  return { ...chair, plan: { ...chair.plan, canals } }
}

describe('after the answer', () => {
  const show = (chair: Chair) => {
    const ahead = expectedRest(chair, undefined, undefined)
    render(<LastDepth chair={chair} ahead={ahead} canal={chair.plan.canals[0] as CanalPlan} />)
  }

  test('the band is shown, and what to do where the depth lies outside it', () => {
    show(chairAt([18_500, 17_000], 2))
    expect(screen.getByText('35/.03 stopped at 17.0')).toBeTruthy()
    expect(screen.getByText('usually 14.4–16.0')).toBeTruthy()
    expect(screen.getByText(/Deeper than expected: check the stop/)).toBeTruthy()
  })

  test('outside the band and within the limits nothing is wrong', () => {
    const chair = chairAt([18_500, 17_000], 2)
    show(withLimits(chair))
    expect(screen.getByText('usually 14.4–16.0')).toBeTruthy()
    expect(screen.getByText('Outside, as in 2 canals of 10: not unusual.')).toBeTruthy()
    expect(screen.queryByText(/than expected/)).toBeNull()
  })

  test('of a bent canal it says that the band is of a straight one', () => {
    show(withLimits(chairAt([18_500, 15_000], 2), { as_if_straight: true }))
    expect(screen.getByText('usually 14.4–16.0, computed as if straight')).toBeTruthy()
    expect(screen.getByText('As expected.')).toBeTruthy()
  })

  test('nothing is said of a depth that was taken back and told anew', () => {
    const judged13 = expectedRest(chairAt([18_500, 13_000]), undefined, undefined)
    const chair = chairAt([18_500, 15_000])
    render(<LastDepth chair={chair} ahead={judged13} canal={chair.plan.canals[0] as CanalPlan} />)
    expect(screen.queryByText(/stopped at/)).toBeNull()
  })

  test('nothing is shown before it', () => {
    show(chairAt([18_500], 1))
    expect(screen.queryByText(/usually/)).toBeNull()
  })

  test('nothing is shown in the clinic', () => {
    show(chairAt([18_500, 17_000], 2, 'clinic'))
    expect(screen.queryByText(/usually/)).toBeNull()
  })
})
