import { useEffect, useRef, useState } from 'preact/hooks'
import { patiently } from '@/api/patiently'
import { Refused, Unreachable } from '@/api/problem'

/** The server's code for an id that came before with something else. */
const ID_USED = 'id-used-differently'

export interface Sending {
  readonly state: 'idle' | 'busy' | 'unsent' | 'refused'
  readonly problem?: Refused
  /** The server works for others: it is sent again by itself. */
  readonly crowded?: boolean
  /** Gives that up; only while nothing is on its way. */
  readonly leave?: () => void
}

/**
 * Sends once at a time and tells how it went: `unsent` where no answer came (sending again is harmless, the id is
 * the form's own), `refused` with the server's reasons. What was typed is not touched. `renew` gives the form another
 * id where the server had this one with other content: an answer was lost, and the form was changed since. Where the
 * server works for others it stays `busy` and is sent again, until the form is left.
 */
export function useSending(renew?: () => void): readonly [Sending, (send: () => Promise<unknown>) => Promise<void>] {
  const [sending, setSending] = useState<Sending>({ state: 'idle' })
  const turn = useRef<AbortController>(undefined)
  useEffect(() => () => turn.current?.abort(), [])
  const run = async (send: () => Promise<unknown>) => {
    const mine = new AbortController()
    turn.current = mine
    const leave = () => mine.abort()
    const waits = (pausing: boolean) => setSending({ state: 'busy', crowded: true, ...(pausing ? { leave } : {}) })
    setSending({ state: 'busy' })
    try {
      await patiently(send, waits, mine.signal)
      setSending({ state: 'idle' })
    } catch (error) {
      if (error instanceof Refused && error.againMs !== undefined) setSending({ state: 'idle' })
      else if (error instanceof Unreachable) setSending({ state: 'unsent' })
      // Signed out: sign-in comes over the form, which stays as it is.
      else if (error instanceof Refused && error.status === 401) setSending({ state: 'idle' })
      else if (error instanceof Refused) {
        if (error.code === ID_USED) renew?.()
        setSending({ state: 'refused', problem: error })
      } else {
        setSending({ state: 'idle' })
        throw error
      }
    }
  }
  return [sending, run]
}
