import type { Invited } from '@/api/shapes'
import type { Sending } from '@/store/forms/sending'

/** How the form around is sending, and what it sends. */
export interface Inviting {
  sending: Sending
  send: (people: Invited[]) => void
}
