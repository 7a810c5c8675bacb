const EXITS = { approved: 'Approved', returned: 'Returned' } as Record<string, string>

/** Words at hold points, of signing off on site, and of what a supervisor's decision leaves out. */
export const hold = {
  returned: (remark: string) => `The supervisor returned this canal: ${remark}`,
  partnerReturned: (canal: string) => `Ends in one with ${canal}, which the supervisor returned: both wait.`,

  // The student's side.
  question: 'What to look at, if you like',
  ask: 'Ask for sign-off',
  askAgain: 'Ask again',
  asked: (at: string) => `Asked ${at}.`,
  askedUnsent: 'Asked. Not sent yet: no connection.',
  comes: (name: string) => `${name} comes to the chair.`,
  supervisorHere: 'The supervisor is here',
  look: 'See all of this hold point',

  isAsked: '· asked',
  isNotAsked: '· not asked yet',
  someoneComes: '· a supervisor comes',

  // The supervisor's side.
  title: (canal: string, what: string) => (what ? `${canal}: ${what}` : canal),
  others: 'Waiting too',
  notAsked: 'Not asked yet: the student has come to this point.',
  asks: (name: string, at: string) => `${name} asks, ${at}`,
  length: 'Length',
  restsOn: (methods: readonly string[]) => `rests on ${methods.join(' and ')}`,
  noLength: 'No length yet.',
  agree: 'The readings that count agree.',
  single: 'One reading counts, and nothing else tests it.',
  disagree: 'The readings do not agree: settle the length before you sign off.',
  estimate: 'An estimate: nothing confirms it yet.',
  counts: 'counts',
  countsNot: 'does not count',
  images: 'Images of this hold point',
  noImages: 'No image was recorded since the last sign-off.',
  since: 'Done since the last sign-off',
  nothingSince: 'Nothing was recorded in this canal since then.',
  exits: { reached: 'at its stop', short: 'short', blocked: 'does not pass', done: 'done' } as Record<string, string>,
  cautions: 'Cautions of this canal',
  reason: 'Reason',
  why: { returned: 'What is to be done again, and why?', despite_missing: 'Why may the work go on all the same?' },
  reasonHint: 'The student works by it; it stays in the record.',
  reasonNeeded: 'Say why, first.',
  notReadable: 'Not readable: repeat the image.',
  approve: 'Approve',
  giveBack: 'Return',
  come: 'Come to the chair',
  despiteMissing: 'Let pass in spite',
  go: { returned: 'Return, with this reason', despite_missing: 'Let pass, with this reason' },
  given: (exit: string, name: string, at: string) => `${EXITS[exit] ?? exit} by ${name}, ${at}.`,
  despiteMissingFor: (reason: string) => `Let pass in spite: ${reason}`,
  onSite: 'on site',
  late: (name: string, at: string) =>
    `${name} was first, ${at}. Your sign-off is kept in the record and moved nothing.`,
  lacking: {
    length: 'No length was taken: record a reading, then ask.',
    image: 'No image, no reason: the image step named neither. Take the image, or say in a note why there is none.',
  },
  lackingSeen: {
    image: 'No image, no reason.',
  },
  noImage: {
    no_sensor: 'No image: there is no sensor.',
    film: 'No image here: it is on film.',
    image_elsewhere: 'No image here: it is kept elsewhere.',
  },
  notWaiting: 'This canal waits for no sign-off now.',
  toList: 'To the list',
  unsent: 'Your sign-off is not sent yet: no connection.',

  // On the student’s phone.
  onSiteSignOff: {
    title: 'Sign off on this phone',
    who: 'Supervisor',
    pick: 'Who are you?',
    none: 'No supervisor of the programme has a code yet. Codes are made on their own account screen.',
    code: 'One-time code',
    codeHint: 'Six digits from the supervisor’s code app. Each counts once.',
    answer: 'Answer',
    answers: { approved: 'Approve', returned: 'Return', despite_missing: 'Let pass in spite' },
    go: 'Give this answer',
    busy: 'Sending …',
    offline: 'This needs the connection: the server checks the code. Nothing was kept.',
    first: 'First everything that was recorded must be sent.',
  },
}

export const codes = {
  title: 'Signing off on a student’s phone',
  says: 'On a student’s phone you sign off with a one-time code from a code app of yours.',
  none: 'You have no codes yet.',
  toConfirm: 'Made, and not confirmed yet. Make it anew if the square below is gone.',
  counts: (since: string) => `Your codes count since ${since}.`,
  password: 'Your password, once more',
  make: 'Make codes',
  renew: 'Make new codes',
  remove: 'Let no code count any more',
  once: 'Shown this once. Take it into your code app, then type its first code.',
  square: 'Square code for a code app',
  app: 'Open in a code app on this phone',
  typed: 'Or type this in:',
  confirm: 'Confirm',
}

export const release = {
  why: (canal: string) => `Say what is to change in ${canal}.`,
  partner: (canal: string, of: string) => `${canal} ends in one with ${of} and waits too.`,
  approveBut: (canals: string) => `Approve all but ${canals}`,
  all: 'Every canal is returned: return the plan instead.',
  waits: (canals: string) => `Not released: ${canals}. The other canals go on.`,
  go: (canals: string) => `Release ${canals}`,
  returned: 'returned',
}
