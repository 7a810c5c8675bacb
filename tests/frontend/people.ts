import type { Session } from '@/api/shapes'
import { session, sessionState } from '@/store/session/session'

type Role = Session['memberships'][number]['role']

export function somebody(name: string, role: Role = 'student'): Session {
  return {
    person: { id: `id of ${name}`, username: name, name },
    memberships: [
      {
        programme: { id: 'p1', name: 'Check programme', invented: true },
        role,
        group: '',
        treats_patients_until: null,
      },
    ],
  }
}

/** Puts somebody at the phone, as after sign-in. */
export function signedIn(name: string, role: Role = 'student'): void {
  session.value = somebody(name, role)
  sessionState.value = 'in'
}
