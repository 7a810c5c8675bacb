import type { CourseEvent, Kind } from './course-event'

/** Kept and shown; where the work stands is the same after them. */
export const MOVES_NOTHING: readonly Kind[] = ['note', 'inspected', 'image', 'irrigated', 'wanted']

/** No step rests on them: they stand in no undo's way, and may be taken back out of turn. */
const BESIDE: readonly Kind[] = [...MOVES_NOTHING, 'turn', 'ask']

/** Answers what was done in the canal before: that is not taken back from under it any more. */
const WORD_ON_A_CANAL: readonly Kind[] = ['sign_off', 'resume']

/** Halts, answers, discards and plans are answered by something new, never taken back. */
const NEVER: readonly Kind[] = [
  'sign_off',
  'emergency',
  'corrected',
  'resume',
  'close',
  'reopen',
  'replan',
  'revoked',
  'release',
  'undo',
  'reading',
  'answer',
  'come',
  'struck',
  'take_over',
  'give_back',
  'on_site',
  'dam',
]

function mayUndo({ kind, body }: CourseEvent): boolean {
  const pastStop = typeof body.depth_um === 'number' && typeof body.stop_um === 'number' && body.depth_um > body.stop_um
  return !NEVER.includes(kind) && !pastStop && body.found !== 'discarded'
}

interface Undone {
  /** What does not count. */
  readonly gone: ReadonlySet<string>
  /** Undos that name something that is not to be taken back by their actor (any more). */
  readonly wrong: readonly string[]
  /** What an undo by its own actor would take back now. */
  readonly open: ReadonlySet<string>
}

/** What was taken back, by the rule that the server folds by. */
export function undone(events: readonly CourseEvent[]): Undone {
  // By canal and actor: what moved the work, the last at the end, as far as nothing has come to rest on it.
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
      const named = String(event.body.undoes)
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
    } else if (BESIDE.includes(event.kind)) beside.set(event.id, event)
    else if (event.kind === 'replan') standing.clear()
    else if (WORD_ON_A_CANAL.includes(event.kind)) standing.delete(event.canal)
    else ownOf(event).push(event)
  }
  const last = [...standing.values()].flatMap((each) => [...each.values()].flatMap((own) => own.at(-1) ?? []))
  const open = [...last, ...beside.values()].filter(mayUndo).map(({ id }) => id)
  return { gone, wrong, open: new Set(open) }
}
