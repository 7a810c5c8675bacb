import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { words } from '@/words/en'
import { AsOf } from './as-of'
import { Notice, Skeleton } from './notice'

interface SeenProps<T> {
  of: {
    readonly value?: T
    readonly at?: number
    readonly state: 'asking' | 'fresh' | 'offline' | 'failed'
    readonly problem?: Error
    readonly again: () => void
  }
  rows?: number
  /** A list says how old it is, and from this age on that it is. */
  old_s?: number | undefined
  /** What the list is of, where no heading says so. */
  what?: string
  children: (value: T) => ComponentChildren
}

/** What the server said or what this phone last saw of it; every state between asking and failing is told. */
export function Seen<T>({ of, rows = 3, old_s, what, children }: SeenProps<T>) {
  const { value, at, state, problem, again } = of
  const retry = { says: words.tryAgain, onDo: again }
  return (
    <>
      {state === 'offline' && (
        <Notice sign="caution" action={retry}>
          {value === undefined || at === undefined ? words.offlineNothing : words.offline(words.clock(at))}
        </Notice>
      )}
      {state === 'failed' && (
        <Notice sign="stop" action={retry}>
          {problem?.message ?? words.failed}
        </Notice>
      )}
      {old_s !== undefined && at !== undefined && state !== 'offline' && <AsOf at={at} old_s={old_s} what={what} />}
      {value === undefined && state === 'asking' && <Waiting rows={rows} />}
      {value !== undefined && children(value)}
    </>
  )
}

const SLOW_MS = 3000 // from here on a reader wonders whether anything is happening

function Waiting({ rows }: { rows: number }) {
  const [slow, setSlow] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setSlow(true), SLOW_MS)
    return () => clearTimeout(timer)
  }, [])
  return (
    <>
      <Skeleton rows={rows} says={words.loading} />
      {slow && <p class="soft">{words.slow}</p>}
    </>
  )
}
