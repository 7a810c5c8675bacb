import { signal } from '@preact/signals'

/** A part of the app that is loaded when it is first wanted. */
export interface Later<M> {
  /** The part where it is here; asking begins to load it. */
  get(): M | undefined
  /** True where the last try brought nothing: no connection, and this phone does not keep it yet. */
  failed(): boolean
  /** Loads it, where it is neither here nor on its way. */
  load(): void
}

export function later<M>(bring: () => Promise<M>): Later<M> {
  const state = signal<'not asked' | 'on its way' | 'failed' | { part: M }>('not asked')
  const load = () => {
    const now = state.peek()
    if (now !== 'not asked' && now !== 'failed') return
    state.value = 'on its way'
    bring().then(
      (part) => {
        state.value = { part }
      },
      () => {
        state.value = 'failed'
      },
    )
  }
  return {
    get() {
      const now = state.value
      if (now === 'not asked') load()
      return typeof now === 'object' ? now.part : undefined
    },
    failed: () => state.value === 'failed',
    load,
  }
}
