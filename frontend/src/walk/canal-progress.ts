import type { CanalState, OutOfCourse, RunSheet, WaitsFor } from '@/api/shapes'
import type { EventOf, PayloadOf } from './course-event'
import { byName } from './own'
import { Walk } from './walk'

type CanalHold = Extract<CanalState, 'paused' | 'past_stop' | 'to_check'>

/** A supervisor's approval at a hold point, as long as no step has followed it, and the images that it rested on. */
interface SignOff {
  readonly by: string
  readonly images: ReadonlySet<string>
}

/** Where one canal stands: its place in the run sheet (`walk`), and what withholds it besides (`held`). */
export class CanalProgress {
  readonly walk: Walk
  held: CanalHold | null = null
  /** The event whose question is open. */
  askedBy: string | null = null
  /** A length was taken, or something was done by an earlier plan: its stops have to be computed anew. */
  toPlan = false
  /** False where a supervisor's decision on the plan leaves this canal out for now. */
  released = true
  /** The event by which the student asked for a supervisor's sign-off; null once it was given. */
  asking: string | null = null
  /** The event by which a supervisor said that they come. */
  coming: string | null = null
  /** Ids of the images recorded in the canal since its last sign-off. */
  private images = new Set<string>()
  /** The last one; null as soon as a step has followed it. */
  signOff: SignOff | null = null
  /** Ids of sign-offs that no longer count: an image that they rested on was put right before a step followed them. */
  readonly reopened = new Set<string>()

  constructor(
    sheet: RunSheet,
    /** All canals of the tooth. */
    private readonly every: () => Readonly<Record<string, CanalProgress>>,
  ) {
    this.walk = new Walk(sheet)
  }

  /** What the present step waits for in other canals. */
  get waitsFor(): readonly WaitsFor[] {
    return this.unmet(this.walk.waitsFor)
  }

  /** Those of the waits whose canal has not come far enough yet. */
  unmet(waits: readonly WaitsFor[]): readonly WaitsFor[] {
    return waits.filter((wait) => !this.every()[wait.canal]?.walk.meets(wait))
  }

  /** Notes an image that was recorded in the canal. */
  addImage(imageId: string | null | undefined) {
    if (imageId) this.images.add(imageId)
  }

  /** Notes a supervisor's sign-off. It uses the images up: the next sign-off rests on new ones. */
  signed(by: string, approved: boolean) {
    this.signOff = approved ? { by, images: this.images } : null
    this.images = new Set()
  }

  /**
   * The image no longer counts in the canal. A sign-off that rested on it has to be given again if no step has followed it;
   * otherwise it stays, and the record marks it.
   */
  reopen(imageId: string) {
    if (!this.signOff?.images.has(imageId)) return
    // Back to the hold point, which waits for another sign-off.
    this.walk.takeBack()
    this.reopened.add(this.signOff.by)
    this.images = new Set([...this.images, ...this.signOff.images])
    this.signOff = null
  }

  get state(): CanalState {
    // The strictest reason first: of a canal that is not released nothing else needs to be known.
    const { node } = this.walk
    if (!this.released && !(node.kind === 'end' && node.outcome === 'finished')) return 'not_released'
    if (this.held) return this.held
    if (this.toPlan) return 'to_plan'
    if (node.kind === 'end') return node.outcome === 'finished' ? 'finished' : 'to_plan'
    if (this.waitsFor.length > 0) return 'waits'
    return node.action === 'sign_off' ? 'hold_point' : 'open'
  }
}

/** Every canal at its first step. Each sees all of them, as a canal that joins another waits for it. */
export function atFirstSteps(sheets: Readonly<Record<string, RunSheet>>): Record<string, CanalProgress> {
  const canals: Record<string, CanalProgress> = byName(
    Object.entries(sheets).map(([name, sheet]) => [name, new CanalProgress(sheet, () => canals)]),
  )
  return canals
}

/** Kinds of events that count only for the plan that was on the screen. */
export type OfPlan =
  | 'step'
  | 'answer'
  | 'reading'
  | 'sign_off'
  | 'turn'
  | 'pause'
  | 'resume'
  | 'release'
  | 'ask'
  | 'come'

/**
 * An event that was recorded on the screen of another plan. A pause holds all the same. Work that the plan in force could
 * not know of is set out of course, and its canal has to be planned anew.
 */
export function byAnotherPlan(event: EventOf<OfPlan>, canal: CanalProgress | undefined): OutOfCourse | null {
  if (canal && event.kind === 'pause') {
    // A reason that holds the canal already is not written over.
    canal.held ??= 'paused'
    return null
  }
  if (canal && (event.kind === 'step' || event.kind === 'reading')) canal.toPlan = true
  return 'other_plan'
}

/** Answers the hold point that the event names. Unlike a step, a sign-off counts during a halt too. */
export function signOff({ id, node: at, payload }: EventOf<'sign_off'>, canal: CanalProgress): OutOfCourse | null {
  const { node } = canal.walk
  if (node.kind === 'end' || node.action !== 'sign_off' || node.id !== at) return 'other_step'
  if (!leave(canal, payload.exit, null)) return 'no_such_exit'
  canal.signed(id, payload.exit === 'approved')
  return null
}

/** Leaves the present step; false where it has no such exit. What was asked of a supervisor is settled then. */
export function leave(canal: CanalProgress, exit: string, depth: number | null): boolean {
  if (!canal.walk.leave(exit, depth)) return false
  canal.asking = null
  canal.coming = null
  return true
}

/** A stop that had slipped lets the canal go on; any other cause is for the supervisor. */
export function answer({ asks, cause }: PayloadOf<'answer'>, canal: CanalProgress): OutOfCourse | null {
  if (canal.held !== 'past_stop' || asks !== canal.askedBy) return 'nothing_asked'
  canal.askedBy = null
  canal.held = cause === 'stop_moved' ? null : 'paused'
  return null
}

/** Lets the canal go on, at the step that the event names or else where it stood. */
export function resume({ node }: EventOf<'resume'>, canal: CanalProgress): OutOfCourse | null {
  // It waits for new stops, and those come with a plan, not with a supervisor's word.
  if (!canal.held && canal.toPlan) return 'withheld'
  if (node && !canal.walk.goTo(node)) return 'other_step'
  if (node) canal.signOff = null
  canal.held = null
  canal.askedBy = null
  canal.asking = null
  canal.coming = null
  return null
}
