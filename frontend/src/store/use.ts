import { useEffect, useMemo } from 'preact/hooks'
import { type Draft, openDraft } from './drafts'
import { type Kept, keptSignal, refresh } from './kept'

/** What is kept under `name`, asked for anew each time a screen opens. */
export function useKept<T>(name: string, ask: () => Promise<T>): Kept<T> & { again: () => void } {
  const again = () => void refresh(name, ask)
  useEffect(again, [name])
  return { ...keptSignal<T>(name).value, again }
}

/** The draft of a form; `first` makes the fields of an empty one. */
export function useDraft<T extends object>(name: string, first: () => T): Draft<T> {
  return useMemo(() => openDraft(name, first()), [name])
}
