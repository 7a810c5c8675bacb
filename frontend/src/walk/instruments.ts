import type { SheetStep } from '@/api/shapes'
import type { CaseState } from './course'
import type { CourseEvent } from './course-event'

/** One instrument at the chair, by what was recorded. */
interface InUse {
  /** The canal it was last in. */
  canal: string
  /** Looked at since then. */
  looked: boolean
  /** Why it is not used again, until a new one is taken; null where it is in use. */
  discarded: string | null
}

const GOES_IN = ['instrument', 'recapitulate', 'gauge']

/** Every instrument that was used or looked at, by its key. An event out of course counts too: it did happen. */
export function instrumentsOf(
  events: readonly CourseEvent[],
  { undone, plans }: Pick<CaseState, 'undone' | 'plans'>,
): ReadonlyMap<string, Readonly<InUse>> {
  const inUse = new Map<string, InUse>()
  for (const event of events) {
    const { id, kind, plan, canal, node } = event
    if (undone.has(id)) continue
    const step = plans[plan]?.[canal]?.nodes[node]
    if (kind === 'step' && step?.kind === 'do' && step.instrument && GOES_IN.includes(step.action)) {
      const before = inUse.get(step.instrument)
      inUse.set(step.instrument, { canal, looked: false, discarded: before?.discarded ?? null })
    }
    if (event.kind === 'inspected') {
      const { instrument: key, why = '' } = event.payload
      const discarded = event.payload.found === 'discarded' ? why : null
      inUse.set(key, { canal: inUse.get(key)?.canal ?? '', looked: true, discarded })
    }
  }
  return inUse
}

/**
 * What has to be looked at before this step is worked: instruments that come from another canal, and the step's own
 * before it cuts once more. The small instrument that passes again and again in one canal is looked at when it leaves it.
 */
export function toLookAt(inUse: ReadonlyMap<string, Readonly<InUse>>, canal: string, node: SheetStep): string[] {
  return [...inUse].flatMap(([key, use]) => {
    if (use.looked || use.discarded !== null) return []
    const again = key === node.instrument && node.action === 'instrument'
    return use.canal !== canal || again ? [key] : []
  })
}
