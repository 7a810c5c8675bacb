const LEVELS = { low: 'low', moderate: 'moderate', high: 'high' } as const

export const difficulty = {
  difficulty: {
    title: 'Difficulty of the case',
    levels: LEVELS,
    level: (level: keyof typeof LEVELS) => `difficulty ${LEVELS[level]}`,
    fromPlan: 'worked out from the plan',
    recorded: 'recorded by a person',
  },
} as const
