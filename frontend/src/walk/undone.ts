import type { Happened, Kind } from './happened'

/** Halts, answers, discards and plans are answered by something new, never taken back. */
const NEVER: readonly Kind[] = [
  'sign_off',
  'inspected',
  'pause',
  'emergency',
  'corrected',
  'resume',
  'close',
  'reopen',
  'replan',
  'release',
  'undo',
  'reading',
  'answer',
  'come',
  'on_site',
  'dam',
]

export function mayUndo({ kind, body }: Happened): boolean {
  const pastStop = typeof body.depth_um === 'number' && typeof body.stop_um === 'number' && body.depth_um > body.stop_um
  return !NEVER.includes(kind) && !pastStop
}

/** What does not count, and the undos that name something else than the actor's own last entry on the canal. */
export function undone(events: readonly Happened[]): { gone: ReadonlySet<string>; wrong: readonly string[] } {
  const own = new Map<string, Happened[]>()
  const gone = new Set<string>()
  const wrong: string[] = []
  for (const event of events) {
    const key = `${event.actor}\n${event.canal}`
    const entries = own.get(key) ?? []
    own.set(key, entries)
    const last = entries.at(-1)
    if (event.kind !== 'undo') entries.push(event)
    else if (last && last.id === event.body.undoes && mayUndo(last)) {
      gone.add(last.id)
      entries.pop()
    } else wrong.push(event.id)
  }
  return { gone, wrong }
}
