import { type Signal, signal } from '@preact/signals'
import { read, remove, write } from '@/store/device/database'
import { personId } from './session'

/** What is typed in a form, kept on the phone until the server has it. */
export interface Draft<T> {
  readonly fields: Signal<T>
  /** True once what an earlier visit left has been looked up. */
  readonly ready: Signal<boolean>
  /** What was typed on an earlier visit is shown. */
  readonly restored: Signal<boolean>
  set(change: Partial<T>): void
  /** Settled once what was typed last is on the phone. */
  settled(): Promise<void>
  /** Begins anew: the server has it, or the writer throws it away. */
  clear(next: T): Promise<void>
}

/** The draft of the form with this name, of the person who is signed in. */
export function openDraft<T extends object>(name: string, initial: T): Draft<T> {
  const person = personId()
  const fields = signal(initial)
  const ready = signal(false)
  const restored = signal(false)
  let touched = false
  let writing: Promise<unknown> = Promise.resolve()
  const stored = read('drafts', person, name)
    .then((entry) => {
      // Whoever typed before the copy was read means what they typed.
      if (entry && !touched) {
        fields.value = { ...initial, ...(entry.value as T) }
        restored.value = true
      }
    })
    .catch(() => undefined)
    .then(() => {
      ready.value = true
    })
  // What changes while one is being written goes with the next: a drag changes it with every frame.
  let due = false
  const writeLast = () => {
    due = false
    return write('drafts', person, name, fields.value)
  }
  return {
    fields,
    ready,
    restored,
    set(change) {
      touched = true
      fields.value = { ...fields.value, ...change }
      if (due) return
      due = true
      writing = writing.then(writeLast).catch(() => undefined)
    },
    async settled() {
      await stored
      await writing
    },
    async clear(next) {
      touched = true
      fields.value = next
      restored.value = false
      writing = writing.then(() => remove('drafts', person, name)).catch(() => undefined)
      await writing
    },
  }
}
