const entries = (n: number) => (n === 1 ? '1 entry' : `${n} entries`)

/** What a phone has to say of itself: its store, its clock, its other tabs, what was not sent. */
export const phone = {
  notRecorded: {
    full: 'NOT RECORDED: this phone’s storage is full. Free some space, then record it again.',
    other: 'NOT RECORDED: this phone could not write it down. Record it again.',
  },
  recordAgain: 'Record again',
  short: (left_mb: number) =>
    `This phone is almost full: ${left_mb} MB are left for the app. Free some space before work cannot be recorded.`,
  clock: (off: string) =>
    `This phone’s clock is ${off} the server’s. The order of the work is right all the same; set the clock.`,
  ahead: (span: string) => `${span} ahead of`,
  behind: (span: string) => `${span} behind`,
  older: 'A newer version of the app is open in another tab. Reload this one: nothing recorded is lost.',
  outdated:
    'This app is older than what is kept on this phone. What you recorded here is safe, but only the newer app can read and send it. Reload to see whether it is back.',
  away: 'The browser cannot open this app’s store. It is tried again by itself; until then nothing can be recorded here.',
  noWork: {
    title: 'No work is shown here',
    says: 'It would lack what you recorded on this phone and is not sent yet. Go on by the newer app, or write down on paper what is done until it is back.',
  },
  reload: 'Reload',
  needsServer: 'This needs the server, and there is no connection. Nothing is lost.',
  notHereYet: 'This part of the app is not on this phone yet, and there is no connection to fetch it. Nothing is lost.',
  waits: 'Another tab holds an older version of the app. Close it: this one waits for it.',
  unsent: (n: number) =>
    n === 0
      ? 'Everything you did on this phone was sent.'
      : `${n === 1 ? '1 entry is' : `${n} entries are`} not sent yet. They stay on this phone, are seen by nobody else, and are sent when you are signed in here with a connection.`,
  keptReading: 'Kept on this phone; sent as soon as there is a connection. Lengths are not yet computed with it.',
  readingWaits: 'Not sent yet: does not count yet.',
  setBack: (mine: number, others: number, still: number) =>
    [
      'The server was brought back to an earlier state.',
      still > 0
        ? `${entries(mine)} of yours had got lost there and ${mine === 1 ? 'is' : 'are'} being sent again.`
        : mine > 0 && `${entries(mine)} of yours had got lost there and ${mine === 1 ? 'was' : 'were'} sent again.`,
      others > 0 &&
        `${entries(others)} of others ${others === 1 ? 'is' : 'are'} not there yet: they come when their devices are next connected.`,
    ]
      .filter(Boolean)
      .join(' '),
  throwAway: 'Throw away',
  readingRefused: 'The server would not take it:',
}

export const leftOver = {
  title: 'Not sent yet',
  waits: (n: number, since: string) => `${n === 1 ? '1 entry' : `${n} entries`}, since ${since}`,
  notListed: 'A case that is not on this list',
  refused: (says: string) => `The server would not take an entry, and what was done after it waits: ${says}`,
  save: 'Save a copy of it',
  saveNow: 'Save or share',
  saveSays:
    'A file with your entries that the server has not taken, as they would be sent. They stay on this phone as well.',
  setAside: 'Set it aside',
  setAsideTitle: 'Set this entry aside?',
  setAsideSays:
    'It does not count any more. It stays on this phone, and a note in the record says what was set aside and why. What was done after it is sent.',
  setAsideNow: 'Set it aside, with a note',
  aStep: 'a step',
  note: (what: string, at: string, why: string) =>
    `Set aside on the phone by whoever did it: ${what}, done ${at.slice(0, 16).replace('T', ' ')} UTC. The server had said: ${why}`,
}

/** A span of time in its largest unit: "4 min", "3 h", "2 days", "5 years". */
export function span(ms: number): string {
  const min = Math.round(ms / 60_000)
  if (min < 100) return `${min} min`
  if (min < 48 * 60) return `${Math.round(min / 60)} h`
  const days = Math.round(min / 1440)
  return days < 730 ? `${days} days` : `${Math.round(days / 365)} years`
}
