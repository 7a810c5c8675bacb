import type { Expectation, ExpectedStep } from '@/api/shapes'

const FELT = { as_expected: 'as expected', shorter: 'shorter than expected', longer: 'deeper than expected' }

interface More extends Pick<ExpectedStep, 'pass_number' | 'reach_share' | 'removes_mm3'> {
  phase: string
}

/** A share as how many of a hundred; neither none nor all is said of what is only nearly so. */
function ofHundred(share: number): string {
  const hundredths = Math.round(share * 100)
  if (hundredths === 0 && share > 0) return 'fewer than 1'
  if (hundredths === 100 && share < 1) return 'more than 99'
  return String(hundredths)
}

function more({ phase, pass_number, reach_share, removes_mm3 }: More): string {
  return [
    pass_number > 1 ? `${phase}, pass ${pass_number}` : phase,
    reach_share == null ? '' : `reaches its stop in ${ofHundred(reach_share)} of 100`,
    removes_mm3 > 0 ? `takes off ${removes_mm3.toFixed(2)} mm³` : 'takes nothing off',
  ]
    .filter(Boolean)
    .join(' · ')
}

function series({ series_passes: passes, makes_room, few_agree }: Expectation): string {
  const range = passes?.low != null && passes.high != null && passes.low !== passes.high
  return [
    passes &&
      `The series should reach its length in ${passes.expected} ${passes.expected === 1 ? 'pass' : 'passes'}${
        range ? ` (${passes.low} to ${passes.high})` : ''
      }.`,
    makes_room && 'A larger size is expected to be needed to make room.',
    few_agree && 'The recorded depths fit hardly any of the canals drawn: take the bands lightly.',
  ]
    .filter(Boolean)
    .join(' ')
}

export const expected = {
  through: 'Step through the work',
  back: 'One step back',
  on: 'One step on',
  place: (at: number, steps: number) =>
    at === 0 ? 'before anything' : at > steps ? 'the whole plan' : `${at} of ${steps}`,
  moment: (place: string, instrument: string, canal: string, depth: string, felt: ExpectedStep['felt']) =>
    `${place}: ${instrument} in ${canal}, ${felt == null ? 'expected at' : 'recorded at'} ${depth}`,
  inCanal: 'in',
  expected: 'expected',
  recorded: 'recorded',
  felt: (felt: NonNullable<ExpectedStep['felt']>) => FELT[felt],
  band: (low: string, high: string) => `usually ${low}–${high}`,
  stop: (stop: string) => `stop ${stop}`,
  more,
  series,
  before: 'Before anything: canals as expected.',
  initialShape: (source: string) => `Widths: ${source}.`,
  whole: (steps: number) => `The whole plan: ${steps} insertions`,
  show: 'Show expected depths',
  about: 'About this estimate',
  usually: '“Usually” is where it stops in 8 of 10 canals drawn like this one.',
  narrows: (canals: readonly string[]) =>
    `${canals.join(', ')}: narrows somewhere towards the orifice; the estimate is weaker there.`,
  /** Read out alone. */
  says: 'What is expected',
  hint: 'An estimate for teaching. What the hand feels always wins.',
  recordedAs: (depth: string, felt: string) => `recorded ${depth}, ${felt}`,
  step: (depth: string, low: string | undefined, high: string | undefined) =>
    `expected ${depth}${low && high ? ` (${low}–${high})` : ''}`,
  asIfStraight: 'computed as if straight',
  bent: (canals: readonly string[]) =>
    `${canals.join(', ')}: bent. The estimate knows nothing of the bend: an instrument may stop earlier.`,
}

export const bands = {
  title: 'How deep so far',
  stoppedAt: (instrument: string, depth: string) => `${instrument} stopped at ${depth}`,
  felt: {
    as_expected: 'As expected.',
    outside: 'Outside, as in 2 canals of 10: not unusual.',
    shorter: 'Shorter than expected: pass the small instrument, look for debris, a ledge or a curve. Do not force.',
    longer: 'Deeper than expected: check the stop and the length before you go on.',
  },
  fromPlan: 'Expected depths are the plan’s: not brought up to date.',
  since: (when: string) => `Expected depths not brought up to date since ${when}.`,
  few: 'What was recorded fits hardly any of the canals drawn: take the bands lightly.',
}
