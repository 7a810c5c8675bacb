/** Words at the chair when another plan has come into force. */
export const newPlan = {
  newPlan: {
    title: (number: number) => `Plan ${number} is in force now`,
    instead: (older: number | undefined, number: number) =>
      `${older === undefined ? 'The plan you worked by' : `Plan ${older}`} is over. Set every rubber stop by plan ${number}.`,
    stops: 'Stops that changed',
    noStop: 'No rubber stop has changed.',
    notHere: 'The plan from before is not on this phone to compare with: check every rubber stop.',
    late: 'Tapped by an older plan after that: kept and shown, and it does not count.',
    go: (number: number) => `I work by plan ${number} now`,
    onItsWay: 'Another plan is in force, and is on its way to this phone. Do not go on by the one from before.',
    unsent: 'waits on this phone',
  },
} as const
