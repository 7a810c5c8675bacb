import { computed, signal } from '@preact/signals'
import * as calls from '@/api/calls'
import { onSignedOut } from '@/api/client'
import { Refused, Unreachable } from '@/api/problem'
import type { NewAccount, Session } from '@/api/shapes'
import { forgetCached, readDevice, writeDevice } from '@/store/device/database'
import { onTabMessage, postToTabs } from '@/store/device/tabs'
import { notifyAsBefore } from '@/store/session/push'

type SessionState = 'asking' | 'out' | 'in' | 'expired'

export const sessionState = signal<SessionState>('asking')
export const session = signal<Session | undefined>(undefined)
/** Counts sign-ins: what could not be read while signed out is asked for again. */
export const signIns = signal(0)

/** The id of the programme that is worked in on this phone, where somebody belongs to several and has said which. */
const workedIn = signal<string | undefined>(undefined)

export const membership = computed(() => {
  const all = session.value?.memberships
  return all?.find(({ programme }) => programme.id === workedIn.value) ?? all?.[0]
})

/** Whose drafts and copies are meant; nobody's before the first sign-in. */
export function personId(): string {
  return session.value?.person.id ?? 'nobody'
}

const SESSION = 'session'
const PROGRAMME = 'programme'

// An answer 401 anywhere: the screen stays as it is, with what was typed, and sign-in comes over it.
onSignedOut(() => {
  if (sessionState.value === 'in') sessionState.value = 'expired'
})

/** Who is signed in: as last known on this phone at once, then as the server says. */
export async function findSession(): Promise<void> {
  workedIn.value = await readDevice<string>(PROGRAMME).catch(() => undefined)
  const known = await readDevice<Session>(SESSION).catch(() => undefined)
  if (known) {
    session.value = known
    sessionState.value = 'in'
  }
  try {
    const now = await calls.getSession()
    if (now) return await take(now)
    // Only who is told that nobody is signed in has to sign in again; any trouble passes.
    if (known) sessionState.value = 'expired'
  } catch (error) {
    if (!(error instanceof Unreachable) && !(error instanceof Refused)) throw error
  }
  if (known) return
  session.value = undefined
  sessionState.value = 'out'
}

/** Somebody signed in or out in another tab: everything is that person's from here on. */
export async function findSessionAgain(): Promise<void> {
  await findSession()
  signIns.value += 1
}

onTabMessage('session', findSessionAgain)

export async function signIn(username: string, password: string): Promise<void> {
  await begin(await calls.signIn(username, password))
}

/** What a link to join leads to. */
export const lookAtLink = calls.lookAtLink

/** Somebody new joins by a link, and is signed in. */
export async function joinAnew(body: NewAccount): Promise<void> {
  await begin(await calls.joinAnew(body))
}

/** Who is signed in joins another programme by a link, and works in it from now on. */
export async function join(invitation: string): Promise<void> {
  const before = session.value?.memberships.map(({ programme }) => programme.id) ?? []
  const now = await calls.join(invitation)
  const joined = now.memberships.find(({ programme }) => !before.includes(programme.id))
  await begin(now)
  if (joined) await workIn(joined.programme.id)
}

/** Another of the person's programmes is worked in. Copies of the one before leave this phone; what was typed stays. */
export async function workIn(programme: string): Promise<void> {
  await writeDevice(PROGRAMME, programme).catch(() => undefined)
  await forgetCached(personId()).catch(() => undefined)
  workedIn.value = programme
}

async function begin(signedIn: Session): Promise<void> {
  await take(signedIn)
  // The server's own page, which had nobody to ask.
  if (location.pathname.startsWith('/oauth/')) return location.reload()
  signIns.value += 1
  postToTabs({ kind: 'session' })
  void notifyAsBefore()
}

async function take(signedIn: Session): Promise<void> {
  session.value = signedIn
  sessionState.value = 'in'
  await writeDevice(SESSION, signedIn).catch(() => undefined)
}

/** Ends the session; copies of the server's things leave this phone, what was typed stays for the next sign-in. */
export async function signOut(): Promise<void> {
  await calls.signOut()
  const person = personId()
  await forgetCached(person).catch(() => undefined)
  await writeDevice(SESSION, undefined).catch(() => undefined)
  session.value = undefined
  sessionState.value = 'out'
  postToTabs({ kind: 'session' })
}
