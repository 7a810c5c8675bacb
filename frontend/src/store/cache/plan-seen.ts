import { type Signal, signal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { readDevice, writeDevice } from '@/store/device/database'
import { personId } from '@/store/session/session'

/** The plan that a person last worked by at the chair of a case, on this phone. Null before there was one. */
type Seen = string | null

const shown = new Map<string, Signal<Seen | undefined>>()

function seenOf(name: string): Signal<Seen | undefined> {
  const seen = shown.get(name)
  if (seen) return seen
  const made = signal<Seen | undefined>(undefined)
  shown.set(name, made)
  // A store that cannot be read knows of none: then the plan in force is the first one seen.
  const read = readDevice<string>(name).catch(() => undefined)
  void read.then((hash) => {
    made.value ??= hash ?? null
  })
  return made
}

interface PlanSeen {
  /** False until it is known what this phone showed last. */
  readonly known: boolean
  /** Hash of the plan that was worked by on this phone, where another one is in force now. */
  readonly older: string | undefined
  /** From here on the plan in force is worked by. */
  acknowledge(): void
}

/** Whether the plan in force is the one that was last worked by on this phone; the first one is taken as it is. */
export function usePlanSeen(caseId: string, inForce: string | undefined): PlanSeen {
  const name = `plan worked by ${personId()} in ${caseId}`
  const seen = useMemo(() => seenOf(name), [name])
  const keep = (hash: string) => {
    seen.value = hash
    // Where it cannot be written it is asked again the next time.
    void writeDevice(name, hash).catch(() => undefined)
  }
  const { value } = seen
  useEffect(() => {
    if (value === null && inForce !== undefined) keep(inForce)
  }, [value, inForce])
  return {
    known: value !== undefined,
    older: value && inForce !== undefined && value !== inForce ? value : undefined,
    acknowledge: () => inForce !== undefined && keep(inForce),
  }
}
