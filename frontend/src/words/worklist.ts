export const worklist = {
  title: 'Waiting for you',
  systems: 'Other systems',
  gaveUp: (host: string, since: string) => `${host} is told nothing any more, since ${since}: it took no message.`,
  gaveUpWay: 'See that it answers, then let it go on: nothing is left out.',
  empty: 'Nothing waits.',
  allCases: 'All cases',
  plans: 'Plans to decide on',
  chairs: 'At the chairs',
  groups: {
    halted: 'Emergency: call or go there',
    waits: 'Waits at the chair',
    going: 'At the chair now',
  },
  takenOver: (who: string) => `${who} has taken over`,
  since: (seconds: number) => {
    const minutes = Math.floor(seconds / 60)
    return minutes < 1 ? 'just begun' : `for ${minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h`}`
  },
  outside: (depth: string, low: string, high: string, asIfStraight: boolean) =>
    `stopped at ${depth}, expected ${low} to ${high}${asIfStraight ? ', computed as if straight' : ''}`,
  more: (n: number) => `The ${n} most urgent; there are more.`,
  halted: 'HALTED',
  checkDue: 'closed for today, to be checked',
  waitsFor: (what: string) => `waits: ${what}`,
  plan: (alias: string, number: number) => `${alias} ·\u00a0plan\u00a0${number}`,
  asks: {
    first: 'first plan of this case',
    after_return: 'changed after it was returned',
    after_approval: 'changed after it was approved',
  },
  stale: 'case changed since',
  waits: (seconds: number) => {
    const minutes = Math.floor(seconds / 60)
    if (minutes < 1) return 'just now'
    if (minutes < 60) return `${minutes} min`
    const hours = Math.floor(minutes / 60)
    return hours < 48 ? `${hours} h` : `${Math.floor(hours / 24)} days`
  },
}
