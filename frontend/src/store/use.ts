import { useEffect, useMemo, useRef } from 'preact/hooks'
import { type Draft, openDraft } from './drafts'
import { type Kept, keptSignal, refresh } from './kept'
import { signIns } from './session'

/** What is kept under `name`, asked for anew when a screen opens, is looked at again, or the connection is back. */
export function useKept<T>(name: string | undefined, ask: () => Promise<T>): Kept<T> & { again: () => void } {
  const again = () => {
    if (name !== undefined) void refresh(name, ask)
  }
  useEffect(() => {
    again()
    const look = () => document.visibilityState === 'visible' && again()
    document.addEventListener('visibilitychange', look)
    addEventListener('online', again)
    return () => {
      document.removeEventListener('visibilitychange', look)
      removeEventListener('online', again)
    }
  }, [name, signIns.value])
  if (name === undefined) return { state: 'asking', again }
  return { ...keptSignal<T>(name).value, again }
}

const POLL_MS = 10_000 // how soon one person sees what another has just done

/** Asks again every ten seconds, or as often as said, while the screen is looked at and something is waited for. */
export function usePolling(waiting: boolean, again: () => void, every_ms = POLL_MS): void {
  const latest = useRef(again)
  latest.current = again
  useEffect(() => {
    if (!waiting) return
    const timer = setInterval(() => document.visibilityState === 'visible' && latest.current(), every_ms)
    return () => clearInterval(timer)
  }, [waiting, every_ms])
}

/** The draft of a form; `first` makes the fields of an empty one. */
export function useDraft<T extends object>(name: string, first: () => T): Draft<T> {
  return useMemo(() => openDraft(name, first()), [name])
}
