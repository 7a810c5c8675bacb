const LEVELS = { low: 'low', moderate: 'moderate', high: 'high' } as const

export const difficulty = {
  difficulty: {
    title: 'Difficulty of the case',
    levels: LEVELS,
    level: (level: keyof typeof LEVELS) => `difficulty ${LEVELS[level]}`,
    groups: { patient: 'Patient', diagnosis: 'Diagnosis', tooth: 'Tooth', additional: 'Further' },
    record: (n: number) => `Difficulty of the case${n > 0 ? `: ${n} recorded` : ''}`,
    recordHint: 'What you see in the patient and on the images. What follows from the plan is counted there.',
    alsoFromPlan: 'Worked out from the plan too; the higher level counts.',
    notRecorded: 'not recorded',
    option: (level: keyof typeof LEVELS, says: string) => `${LEVELS[level]}: ${says}`,
    fromPlan: 'worked out from the plan',
    recorded: 'recorded by a person',
  },
} as const
