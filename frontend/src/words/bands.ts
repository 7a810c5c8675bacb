export const bands = {
  bands: {
    title: 'How deep so far',
    stoppedAt: (instrument: string, depth: string) => `${instrument} stopped at ${depth}`,
    felt: {
      as_expected: 'As expected.',
      outside: 'Not unusual: 2 of 10 lie outside.',
      shorter: 'Shorter than expected: pass the small instrument, look for debris, a ledge or a curve. Do not force.',
      longer: 'Deeper than expected: check the stop and the length before you go on.',
    },
    fromPlan: 'Expected depths are the plan’s: not brought up to date.',
    since: (when: string) => `Expected depths not brought up to date since ${when}.`,
    few: 'What was recorded fits hardly any of the canals drawn: take the bands lightly.',
  },
} as const
