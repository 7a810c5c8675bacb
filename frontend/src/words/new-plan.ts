/** Words at the chair when another plan has come into force, or a length asks for one. */
export const newPlan = {
  came: (number: number) => `plan ${number} came into force`,
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
}

export const lengthAgain = {
  summary: (length: string) => `Length ${length} · take it again`,
  none: 'Take the length',
  save: 'Record this length',
  from: (point: string) => `Measured from the ${point}.`,
  due: 'A length was taken or struck, or work came in late: the stops of this canal are worked out anew.',
  says: 'The canal waits until the server has worked out its stops from it. Other canals go on.',
  notSent:
    'A length was taken and the server does not have it yet: its stops cannot be worked out here. Other canals go on.',
  working: 'The server works out the stops.',
  again: 'Work out the stops',
  asks: 'The new plan has to be approved before this canal goes on. Other canals go on by the old one.',
  byOther: 'The stops of this canal have to be worked out anew. The student of the case does that on their phone.',
  toPlan: 'To the plan',
}
