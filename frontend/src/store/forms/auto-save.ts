import { useRef, useState } from 'preact/hooks'
import { type Sending, useSending } from './sending'

/**
 * Sends facts one by one, in the order in which they are chosen. While they are on their way they are shown as chosen, and
 * once all are answered as the server has them. `send` is given all facts, and beside them those that were chosen.
 */
export function useAutoSave<T extends object>(
  charted: T,
  send: (all: T, chosen: Partial<T>) => Promise<void>,
): readonly [T, Sending, (next: Partial<T>) => void] {
  const [sending, run] = useSending()
  const [wanted, setWanted] = useState<Partial<T>>({})
  const latest = useRef({ turn: 0, wanted: {} as Partial<T>, before: Promise.resolve() })
  const change = (next: Partial<T>) => {
    const now = latest.current
    now.turn += 1
    const mine = now.turn
    now.wanted = { ...now.wanted, ...next }
    setWanted(now.wanted)
    const chosen = now.wanted
    const all = { ...charted, ...chosen }
    now.before = now.before
      .then(() => run(() => send(all, chosen)))
      .finally(() => {
        // Something was chosen since: what is shown waits for the last answer.
        if (now.turn !== mine) return
        now.wanted = {}
        setWanted({})
      })
  }
  return [{ ...charted, ...wanted }, sending, change]
}
