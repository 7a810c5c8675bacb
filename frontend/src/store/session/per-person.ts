import { type Signal, signal } from '@preact/signals'
import { personId } from './session'

/** A list that lies on the phone, one for every person: the signal of who is signed in, and reading it anew. */
export function perPerson<T>(read: (person: string) => Promise<readonly T[]>) {
  const signals = new Map<string, Signal<readonly T[]>>()
  const load = async (person: string): Promise<void> => {
    const known = signals.get(person)
    if (known) known.value = await read(person)
  }
  const shown = (): Signal<readonly T[]> => {
    const person = personId()
    const known = signals.get(person)
    if (known) return known
    const made = signal<readonly T[]>([])
    signals.set(person, made)
    void load(person)
    return made
  }
  return { shown, load }
}
