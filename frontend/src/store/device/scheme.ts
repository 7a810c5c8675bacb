import { effect, signal } from '@preact/signals'

export type Scheme = 'as the phone' | 'light' | 'dark'

const NAME = 'fourth-canal-scheme'

// Read before the first frame, hence not from the database.
const remembered = globalThis.localStorage?.getItem(NAME)

export const scheme = signal<Scheme>(remembered === 'light' || remembered === 'dark' ? remembered : 'as the phone')

/** Puts the chosen scheme on the document and remembers it on this phone. */
export function followScheme(): void {
  effect(() => {
    const root = document.documentElement
    if (scheme.value === 'as the phone') {
      root.removeAttribute('data-scheme')
      localStorage.removeItem(NAME)
    } else {
      root.dataset.scheme = scheme.value
      localStorage.setItem(NAME, scheme.value)
    }
  })
}
