import { useEffect, useMemo } from 'preact/hooks'
import { type Draft, openDraft } from '@/store/session/drafts'
import { signIns } from '@/store/session/session'
import { type Cached, cachedSignal, refresh } from './cached'
import { pace, watch } from './watch'

/**
 * What is kept under `name`, asked for when a screen opens, where no answer came, when it is looked at again, or the
 * connection is back. `again` asks because something has changed.
 */
export function useCached<T>(name: string | undefined, ask: () => Promise<T>) {
  const again = () => {
    if (name !== undefined) void refresh(name, ask)
  }
  useEffect(() => (name === undefined ? undefined : watch(name, ask)), [name, signIns.value])
  const kept: Cached<T> = name === undefined ? { state: 'asking' } : cachedSignal<T>(name).value
  return { ...kept, name, again }
}

const POLL_MS = 10_000 // how soon one person sees what another has just done

/** Asks anew every ten seconds, or as often as said, while the screen is looked at and something is waited for. */
export function usePolling(waiting: boolean, { name }: { name: string | undefined }, every_ms = POLL_MS): void {
  useEffect(
    () => (waiting && name !== undefined ? pace(name, every_ms) : undefined),
    [waiting, name, every_ms, signIns.value],
  )
}

/** The draft of a form; `first` makes the fields of an empty one. */
export function useDraft<T extends object>(name: string, first: () => T): Draft<T> {
  return useMemo(() => openDraft(name, first()), [name])
}
