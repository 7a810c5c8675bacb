import type { CourseEvent } from './course-event'
import { rulesOf } from './registry'

/**
 * Whether it is of a kind that may be taken back. Halts, sign-offs, discards and depths past the stop stay: something new
 * answers them.
 */
function mayUndo(event: CourseEvent): boolean {
  const discards = event.kind === 'inspected' && event.payload.found === 'discarded'
  return rulesOf(event.kind).undo !== 'never' && !pastStop(event) && !discards
}

/** Whether an instrument went deeper than the stop that was shown. */
function pastStop(event: CourseEvent): boolean {
  if (event.kind !== 'step') return false
  const { depth_um, stop_um } = event.payload
  return depth_um != null && stop_um != null && depth_um > stop_um
}

interface Undone {
  /** Ids of the events that no longer count. */
  readonly gone: ReadonlySet<string>
  /** Ids of the undos that take back nothing: their actor may not undo what they name, or it is too late. */
  readonly wrong: readonly string[]
  /** Ids of the events that their own actor could take back now. */
  readonly open: ReadonlySet<string>
}

/** What was taken back, by the server's rule. It follows from the events alone, so it is decided before the fold. */
export function undone(events: readonly CourseEvent[]): Undone {
  // By canal and actor: the events that moved the work and that nothing rests on yet, the latest at the end.
  const standing = new Map<string, Map<string, CourseEvent[]>>()
  const beside = new Map<string, CourseEvent>()
  const gone = new Set<string>()
  const wrong: string[] = []
  const ownOf = ({ canal, actor }: CourseEvent) => {
    const each = standing.get(canal) ?? new Map<string, CourseEvent[]>()
    standing.set(canal, each)
    const own = each.get(actor) ?? []
    each.set(actor, own)
    return own
  }
  for (const event of events) {
    if (event.kind === 'undo') {
      const named = event.payload.undoes
      const own = ownOf(event)
      const last = own.at(-1)
      const other = beside.get(named)
      const mine = other?.actor === event.actor && other.canal === event.canal && mayUndo(other)
      if (last?.id === named && mayUndo(last)) own.pop()
      else if (mine) beside.delete(named)
      else {
        wrong.push(event.id)
        continue
      }
      gone.add(named)
    } else if (rulesOf(event.kind).undo === 'any_time') beside.set(event.id, event)
    else if (event.kind === 'replan') standing.clear()
    // It answers what was done in the canal before it, which from now on can no longer be taken back.
    else if (event.kind === 'sign_off' || event.kind === 'resume') standing.delete(event.canal)
    else ownOf(event).push(event)
  }
  const last = [...standing.values()].flatMap((each) => [...each.values()].flatMap((own) => own.at(-1) ?? []))
  const open = [...last, ...beside.values()].filter(mayUndo).map(({ id }) => id)
  return { gone, wrong, open: new Set(open) }
}
