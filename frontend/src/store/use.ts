import { useEffect } from 'preact/hooks'
import { type Kept, keptSignal, refresh } from './kept'

/** What is kept under `name`, asked for anew each time a screen opens. */
export function useKept<T>(name: string, ask: () => Promise<T>): Kept<T> & { again: () => void } {
  const again = () => void refresh(name, ask)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the name says what is asked for
  useEffect(again, [name])
  return { ...keptSignal<T>(name).value, again }
}
