import type { OutOfCourse, Prerequisite, Setting } from '@/api/shapes'
import { answer, byAnotherPlan, type CanalProgress, leave, type OfPlan, resume, signOff } from './canal-progress'
import type { CourseEvent, EventOf } from './course-event'
import { Emergencies } from './emergencies'
import { byName } from './own'
import { putIntoForce, release, revoke, type Sheets, strike } from './plan-events'
import { ofWork } from './registry'
import { TakenOver } from './taken-over'
import { undone } from './undone'
import { Visit } from './visit'
import { type OfVisit, takeVisit } from './visit-events'

export type { CanalProgress } from './canal-progress'
export type { Sheets } from './plan-events'

/**
 * The whole tooth: the fold of everything recorded, in order, by the rules that the server folds by. Which plan is in
 * force the events alone say.
 */
export class CaseState {
  /** Hash of the plan in force; empty before there was one. */
  plan = ''
  canals: Record<string, CanalProgress> = byName([])
  /** The event by which the approval of the plan in force was withdrawn. */
  revokedBy: string | null = null
  readonly emergencies = new Emergencies()
  readonly visit: Visit
  turnedTo = ''
  readonly takenOver = new TakenOver()
  readonly outOfCourse: Record<string, OutOfCourse> = {}
  readonly undone: ReadonlySet<string>
  /** What its own actor may still take back. */
  readonly undoable: ReadonlySet<string>

  constructor(
    /** Run sheets of every version that was ever in force, by hash. */
    readonly plans: Readonly<Record<string, Sheets>>,
    events: readonly CourseEvent[],
    setting: Setting,
  ) {
    this.visit = new Visit(setting)
    const { gone, wrong, open } = undone(events)
    this.undone = gone
    this.undoable = open
    for (const id of wrong) this.outOfCourse[id] = 'not_to_undo'
    for (const event of events) {
      if (event.kind === 'undo' || gone.has(event.id)) continue
      const why = this.take(event)
      if (why) this.outOfCourse[event.id] = why
    }
  }

  /** Whether a supervisor's sign-off on the canal counts: it was in course, and has not to be given again. */
  signOffCounts(canal: string, id: string): boolean {
    return !this.outOfCourse[id] && !this.canals[canal]?.reopened.has(id)
  }

  /** The emergency that stopped the work. */
  get haltedBy(): string | null {
    return this.emergencies.haltedBy
  }

  /** The emergency since which every canal is irrigated with saline alone. */
  get salineBy(): string | null {
    return this.emergencies.salineBy
  }

  /** What has to be there before any canal is worked. */
  get missing(): Prerequisite[] {
    return this.missingBut(this.haltedBy !== null)
  }

  /** The same, where `halted` says whether the work counts as halted. */
  private missingBut(halted: boolean): Prerequisite[] {
    const missing = this.visit.missing(halted)
    return this.revokedBy ? [...missing, 'revoked'] : missing
  }

  private take(event: CourseEvent): OutOfCourse | null {
    switch (event.kind) {
      case 'note':
      case 'inspected':
      case 'irrigated':
      case 'wanted':
      case 'undo':
        // Where the work stands is the same after them; what an undo takes back was left out before.
        return null
      case 'image':
        this.canals[event.canal]?.addImage(event.payload.image_id)
        return null
      case 'emergency':
        this.emergencies.tell(event.id, event.payload)
        return null
      case 'corrected':
        return this.emergencies.correct(event.id, event.payload) ? null : 'nothing_asked'
      case 'replan':
        return putIntoForce(event, this)
      case 'revoked':
        return revoke(event, this)
      case 'struck':
        return strike(event, this.canals)
      case 'take_over':
        return this.takenOver.take(event.actor) ? null : 'nothing_asked'
      case 'give_back':
        return this.takenOver.end(event.actor) ? null : 'nothing_asked'
      default:
        return this.ofWhoWorks(event)
    }
  }

  private ofWhoWorks(event: EventOf<OfVisit | OfPlan>): OutOfCourse | null {
    if (ofWork(event.kind) && this.takenOver.ended(event.actor)) return 'not_working'
    switch (event.kind) {
      case 'close':
      case 'reopen':
      case 'on_site':
      case 'dam':
        return takeVisit(event, this)
      case 'come':
        if (event.canal !== '') break
        // Holds for the tooth, whatever plan was on the screen.
        this.emergencies.come(event.id)
        return null
    }
    const canal = this.canals[event.canal]
    if (event.plan !== this.plan) return byAnotherPlan(event, canal)
    if (event.canal === '') return this.takeTooth(event)
    return canal ? this.takeCanal(event, canal) : 'no_canal'
  }

  /** An event that names no canal and holds for the whole tooth. */
  private takeTooth(event: EventOf<OfPlan>): OutOfCourse | null {
    switch (event.kind) {
      case 'resume':
        return this.emergencies.resume(event.payload) ? null : 'nothing_asked'
      case 'sign_off':
        return this.visit.signOff(event.node, event.payload.exit) ? null : 'nothing_asked'
      case 'release':
        return release(event.payload, this.canals)
      case 'ask':
        return null
      default:
        return 'no_canal'
    }
  }

  private takeCanal(event: EventOf<OfPlan>, canal: CanalProgress): OutOfCourse | null {
    switch (event.kind) {
      case 'step':
        return this.step(event, canal)
      case 'sign_off':
        return signOff(event, canal)
      case 'answer':
        return answer(event.payload, canal)
      case 'resume':
        return resume(event, canal)
      case 'release':
        return release(event.payload, this.canals)
      case 'reading':
        canal.toPlan = true
        return null
      case 'pause':
        canal.held ??= 'paused'
        return null
      case 'turn':
        this.turnedTo = event.canal
        return null
      case 'ask':
        canal.asking = event.id
        return null
      case 'come':
        canal.coming = event.id
        return null
    }
  }

  private step({ id, node: at, payload, notChecked }: EventOf<'step'>, canal: CanalProgress): OutOfCourse | null {
    const { walk } = canal
    const [missing] = this.missingBut(this.emergencies.halts(id))
    if (missing) return missing
    if (notChecked === 'depth') return 'not_checked'
    if (canal.held || canal.toPlan || !canal.released) return 'withheld'
    if (walk.at !== at) return 'other_step'
    if (canal.state === 'hold_point' || canal.state === 'waits') return 'withheld'
    const stop = walk.stop()
    const { exit, depth_um = null, image_id } = payload
    const { node } = walk
    if (!leave(canal, exit, depth_um)) return 'no_such_exit'
    canal.signOff = null
    if (node.kind === 'do' && node.action === 'image') canal.addImage(image_id)
    if (depth_um !== null && stop !== null && depth_um > stop) {
      canal.held = 'past_stop'
      canal.askedBy = id
    }
    return null
  }
}
