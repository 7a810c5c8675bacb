import { computed, signal } from '@preact/signals'
import * as calls from '@/api/calls'
import { onSignedOut } from '@/api/client'
import { Refused, Unreachable } from '@/api/problem'
import type { Session } from '@/api/shapes'
import { forgetCached, readDevice, writeDevice } from '@/store/device/database'
import { onTabMessage, postToTabs } from '@/store/device/tabs'

type SessionState = 'asking' | 'out' | 'in' | 'expired'

export const sessionState = signal<SessionState>('asking')
export const session = signal<Session | undefined>(undefined)
/** Counts sign-ins: what could not be read while signed out is asked for again. */
export const signIns = signal(0)

export const membership = computed(() => session.value?.memberships[0])

/** Whose drafts and copies are meant; nobody's before the first sign-in. */
export function personId(): string {
  return session.value?.person.id ?? 'nobody'
}

const SESSION = 'session'

// An answer 401 anywhere: the screen stays as it is, with what was typed, and sign-in comes over it.
onSignedOut(() => {
  if (sessionState.value === 'in') sessionState.value = 'expired'
})

/** Who is signed in: as last known on this phone at once, then as the server says. */
export async function findSession(): Promise<void> {
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
  await take(await calls.signIn(username, password))
  // The server's own page, which had nobody to ask.
  if (location.pathname.startsWith('/oauth/')) return location.reload()
  signIns.value += 1
  postToTabs({ kind: 'session' })
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
