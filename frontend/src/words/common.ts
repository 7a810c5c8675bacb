/** Names in a row: "MB1, DB and P". */
export const listed = (all: readonly string[]): string =>
  all.length > 1 ? `${all.slice(0, -1).join(', ')} and ${all.at(-1)}` : (all[0] ?? '')

export const common = {
  product: 'Fourth Canal',
  state: {
    draft: 'draft',
    waiting: 'waiting',
    approved: 'approved',
    returned: 'returned',
    revoked: 'approval withdrawn',
    approval_void: 'approval void',
    none: 'no plan yet',
    caution: 'caution',
    stop: 'must be put right',
    note: 'note',
  },
  skip: 'Skip to content',
  back: 'Back',
  tryAgain: 'Try again',
  loading: 'On its way',
  slow: 'Still asking the server …',
  save: 'Save',
  throwAway: 'Start anew',
  required: 'Fill this in.',
  notSent: 'Not sent: no answer from the server. What you typed is kept on this phone.',
  arrivedBefore:
    'What you sent first had arrived after all. This is different from it: look at what is there, then send this as another one.',
  notKnown: 'The app met something it does not know. Reload it; what you typed is kept.',
  restored: 'This is what you had typed before. It has not been sent.',
  asOf: (clock: string, what = '') => `${what && `${what}: `}as of ${clock}`,
  old: (clock: string, what = '') =>
    `${what ? `${what}: no` : 'No'} news since ${clock}. What has happened since is not shown here.`,
  offline: (seen: string) => `No connection. This is what was seen ${seen}.`,
  offlineNothing: 'No connection, and nothing of this is on the phone yet.',
  failed: 'The server could not answer.',
  newVersion: 'Another version of the app is ready.',
  takeUp: 'Take it up',
  notFound: { title: 'Nothing here', says: 'There is no such screen.', home: 'To the cases' },
  setting: { block: 'Training block', extracted: 'Extracted tooth', clinic: 'Clinic' } as Record<string, string>,
  scheme: { label: 'Light or dark', 'as the phone': 'as the phone', light: 'light', dark: 'dark' },
  account: { title: 'You and this phone', signOut: 'Sign out', role: 'Role', programme: 'Programme' },
  fields: {
    less: (label: string, step: number) => `${label}: less by ${step}`,
    more: (label: string, step: number) => `${label}: more by ${step}`,
    noNumber: 'Type a number, for example 19.5 or 19,5.',
    noWhole: 'Type a whole number.',
  },
  signIn: {
    title: 'Sign in',
    username: 'User name',
    password: 'Password',
    go: 'Sign in',
    busy: 'Signing in …',
    again: 'Your sign-in has run out. Sign in again; what you typed is still here.',
    unreachable: 'No answer from the server. Check the connection and try again.',
    wrong: 'User name and password do not fit together. Check both and try again.',
  },
  notice: {
    title: 'Before you start',
    points: [
      'Fourth Canal is a training tool. It supports the person who supervises you and does not replace them.',
      'The licensed clinician who supervises you decides. Where this app and they differ, they are right.',
      'Instruments are used as their maker says. Local codes and the rules of your school come before anything here.',
      'Patients have an alias here, never a name, a date of birth or a number that leads to them.',
    ],
    go: 'Understood',
    always: 'A training tool: the supervising licensed clinician, the maker’s instructions and local codes decide.',
  },
} as const

const TO_THE_MINUTE = { hour: '2-digit', minute: '2-digit' } as const

/** A time for a sentence: the hour today, else the day too. */
export function when(at: number | string, now: Date = new Date()): string {
  const time = new Date(at)
  return withDay(time, now, time.toLocaleTimeString('en-GB', TO_THE_MINUTE))
}

/** The same to the second: how old a list is. */
export function clock(at: number, now: Date = new Date()): string {
  const time = new Date(at)
  return withDay(time, now, time.toLocaleTimeString('en-GB', { ...TO_THE_MINUTE, second: '2-digit' }))
}

function withDay(time: Date, now: Date, clock: string): string {
  if (time.toDateString() === now.toDateString()) return clock
  return `${time.toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })}, ${clock}`
}
