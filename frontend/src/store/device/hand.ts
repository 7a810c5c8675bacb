import { signal } from '@preact/signals'

export type Hand = 'right' | 'left'

const NAME = 'fourth-canal-hand'

/** The hand that answers at the chair. Read before the first frame, hence not from the database. */
export const hand = signal<Hand>(globalThis.localStorage?.getItem(NAME) === 'left' ? 'left' : 'right')

export function setHand(chosen: Hand): void {
  hand.value = chosen
  localStorage.setItem(NAME, chosen)
}
