import { useRef, useState } from 'preact/hooks'
import { type Sending, useSending } from './sending'

/**
 * Facts that are sent one by one as they are chosen. Shown as chosen while they are on their way, in the order they
 * were chosen; once all are answered, as the server says. `send` gets all facts, and those chosen apart.
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
        if (now.turn !== mine) return
        now.wanted = {}
        setWanted({})
      })
  }
  return [{ ...charted, ...wanted }, sending, change]
}
