import { useEffect, useState } from 'preact/hooks'
import { words } from '@/words/en'
import { Notice } from './notice'

/** From this age on nobody should rely on a list that is brought up to date every few seconds. */
export const OLD_S = 20

/** Since when nothing of what happened is shown, and of what: quiet while that is recent, a caution once it is old. */
export function AsOf({ at, old_s = OLD_S, what }: { at: number; old_s?: number; what?: string | undefined }) {
  const says = words.clock(at)
  if (useOlder(at, old_s * 1000)) return <Notice sign="caution">{words.old(says, what)}</Notice>
  return <p class="small soft as-of">{words.asOf(says, what)}</p>
}

const A_LITTLE_MS = 20 // timers go off a moment early

function useOlder(at: number, than_ms: number): boolean {
  const [, draw] = useState(0)
  const left_ms = at + than_ms - Date.now()
  useEffect(() => {
    if (left_ms <= 0) return
    const timer = setTimeout(() => draw(at), left_ms + A_LITTLE_MS)
    return () => clearTimeout(timer)
  }, [at, than_ms])
  return left_ms <= 0
}
