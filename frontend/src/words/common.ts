/** Names in a row: "MB1, DB and P". */
export const listed = (all: readonly string[]): string =>
  all.length > 1 ? `${all.slice(0, -1).join(', ')} and ${all.at(-1)}` : (all[0] ?? '')

export const product = 'Fourth Canal'

export const state = {
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
}

export const skip = 'Skip to content'

export const back = 'Back'

export const close = 'Close'

export const tryAgain = 'Try again'

export const loading = 'On its way'

export const slow = 'Still asking the server …'

export const save = 'Save'

export const throwAway = 'Start anew'

export const required = 'Fill this in.'

export const crowded = 'The server works for others. This is sent again by itself; what you entered is kept.'
export const stopWaiting = 'Stop waiting'
export const notSent = 'Not sent: no answer from the server. What you typed is kept on this phone.'

export const arrivedBefore =
  'What you sent first had arrived after all. This is different from it: look at what is there, then send this as another one.'

export const notKnown = 'The app met something it does not know. Reload it; what you typed is kept.'

export const restored = 'This is what you had typed before. It has not been sent.'

export const asOf = (clock: string, what = '') => `${what && `${what}: `}as of ${clock}`

export const old = (clock: string, what = '') =>
  `${what ? `${what}: no` : 'No'} news since ${clock}. What has happened since is not shown here.`

export const offline = (seen: string) => `No connection. This is what was seen ${seen}.`

export const offlineNothing = 'No connection, and nothing of this is on the phone yet.'

export const failed = 'The server could not answer.'

export const newVersion = 'Another version of the app is ready.'

export const takeUp = 'Take it up'

export const notFound = { title: 'Nothing here', says: 'There is no such screen.', home: 'To the cases' }

export const setting = { block: 'Training block', extracted: 'Extracted tooth', clinic: 'Clinic' } as Record<
  string,
  string
>

export const scheme = { label: 'Light or dark', 'as the phone': 'as the phone', light: 'light', dark: 'dark' }

export const account = {
  keys: 'Keys for programs',
  title: 'You and this phone',
  signOut: 'Sign out',
  role: 'Role',
  programme: 'Programme',
  people: 'People',
  workIn: (programme: string) => `Work in ${programme}`,
}

export const fields = {
  less: (label: string, step: number) => `${label}: less by ${step}`,
  more: (label: string, step: number) => `${label}: more by ${step}`,
  noNumber: 'Type a number, for example 19.5 or 19,5.',
  noWhole: 'Type a whole number.',
}

export const signIn = {
  /** Read out alone. */
  onceMore: 'Sign in again',
  title: 'Sign in',
  username: 'User name',
  password: 'Password',
  go: 'Sign in',
  busy: 'Signing in …',
  again: 'Your sign-in has run out. Sign in again; what you typed is still here.',
  unreachable: 'No answer from the server. Check the connection and try again.',
  wrong: 'User name and password do not fit together. Check both and try again.',
}

export const notice = {
  title: 'Before you start',
  points: [
    'Fourth Canal is a training tool. It supports the person who supervises you and does not replace them.',
    'The licensed clinician who supervises you decides. Where this app and they differ, they are right.',
    'Instruments are used as their maker says. Local codes and the rules of your school come before anything here.',
    'Patients have an alias here, never a name, a date of birth or a number that leads to them.',
  ],
  go: 'Understood',
  always: 'A training tool: the supervising licensed clinician, the maker’s instructions and local codes decide.',
}

// By hand: a browser reads its tables of languages for the first time it writes, which takes a phone longer than a screen.
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sept', 'Oct', 'Nov', 'Dec'] as const

const two = (digits: number) => String(digits).padStart(2, '0')

const minute = (time: Date) => `${two(time.getHours())}:${two(time.getMinutes())}`

const day = (time: Date) => `${time.getDate()} ${MONTHS[time.getMonth()]}`

/** A time for a sentence: the hour today, else the day too. */
export function when(at: number | string, now: Date = new Date()): string {
  const time = new Date(at)
  return withDay(time, now, minute(time))
}

/** The same to the second: how old a list is. */
export function clock(at: number, now: Date = new Date()): string {
  const time = new Date(at)
  return withDay(time, now, `${minute(time)}:${two(time.getSeconds())}`)
}

/** A time that is read in years to come. */
export function dated(at: number | string): string {
  const time = new Date(at)
  return `${day(time)} ${time.getFullYear()}, ${minute(time)}`
}

/** A day with its year. */
export function date(at: string): string {
  const time = new Date(at)
  return `${day(time)} ${time.getFullYear()}`
}

function withDay(time: Date, now: Date, clock: string): string {
  if (time.toDateString() === now.toDateString()) return clock
  return `${day(time)}, ${clock}`
}
