import { useEffect, useMemo } from 'preact/hooks'
import { type Draft, openDraft } from './drafts'
import { type Kept, keptSignal, refresh } from './kept'

/** What is kept under `name`, asked for anew each time a screen opens; nothing while there is no name yet. */
export function useKept<T>(name: string | undefined, ask: () => Promise<T>): Kept<T> & { again: () => void } {
  const again = () => {
    if (name !== undefined) void refresh(name, ask)
  }
  useEffect(again, [name])
  if (name === undefined) return { state: 'asking', again }
  return { ...keptSignal<T>(name).value, again }
}

/** The draft of a form; `first` makes the fields of an empty one. */
export function useDraft<T extends object>(name: string, first: () => T): Draft<T> {
  return useMemo(() => openDraft(name, first()), [name])
}
