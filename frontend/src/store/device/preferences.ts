import { effect, signal } from '@preact/signals'

// What this phone remembers of its reader's wishes. Read before the first frame, hence not from the database.

export type Hand = 'right' | 'left'

const HAND = 'fourth-canal-hand'

/** The hand that answers at the chair. */
export const hand = signal<Hand>(globalThis.localStorage?.getItem(HAND) === 'left' ? 'left' : 'right')

export function setHand(chosen: Hand): void {
  hand.value = chosen
  localStorage.setItem(HAND, chosen)
}

export type Scheme = 'as the phone' | 'light' | 'dark'

const SCHEME = 'fourth-canal-scheme'

const remembered = globalThis.localStorage?.getItem(SCHEME)

export const scheme = signal<Scheme>(remembered === 'light' || remembered === 'dark' ? remembered : 'as the phone')

/** Puts the chosen scheme on the document and remembers it on this phone. */
export function followScheme(): void {
  effect(() => {
    const root = document.documentElement
    if (scheme.value === 'as the phone') {
      root.removeAttribute('data-scheme')
      localStorage.removeItem(SCHEME)
    } else {
      root.dataset.scheme = scheme.value
      localStorage.setItem(SCHEME, scheme.value)
    }
  })
}

const NOTICE_READ = 'fourth-canal-notice-read'

/** Whether this phone's reader has read what everyone reads once. */
export const noticeRead = signal(globalThis.localStorage?.getItem(NOTICE_READ) === 'yes')

export function readNotice(): void {
  noticeRead.value = true
  localStorage.setItem(NOTICE_READ, 'yes')
}
