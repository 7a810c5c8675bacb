import type { RunSheet } from '@/api/shapes'
import { answer, byAnotherPlan, CanalCourse, leave, type OutOfCourse, resume, signOff } from './canal-course'
import type { CourseEvent } from './course-event'
import { Emergencies } from './emergencies'
import { byName } from './own'
import { concernsImage } from './put-right'
import { TakenOver } from './taken-over'
import { MOVES_NOTHING, undone } from './undone'
import { type Prerequisite, type Setting, Visit } from './visit'
import { ofWork } from './who-tells'

export type { CanalCourse, CanalState, OutOfCourse } from './canal-course'

/** Run sheets of one plan by canal. */
export type Sheets = Readonly<Record<string, RunSheet>>

interface Reopened {
  readonly as_left?: readonly string[]
  readonly found?: readonly { canal: string; reference_point?: string }[]
}

/**
 * The whole tooth: the fold of everything recorded, in order, by the rules that the server folds by. Which plan is in
 * force the events alone say.
 */
export class Course {
  /** Hash of the plan in force; empty before there was one. */
  plan = ''
  canals: Record<string, CanalCourse> = byName([])
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

  /** Whether a supervisor's word on the canal counts: it came where it was asked for, and is not asked for again. */
  wordCounts(canal: string, id: string): boolean {
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

  /** The same, said of a halt as it is told. */
  private missingBut(halted: boolean): Prerequisite[] {
    const missing = this.visit.missing(halted)
    return this.revokedBy ? [...missing, 'revoked'] : missing
  }

  private take(event: CourseEvent): OutOfCourse | null {
    if (event.kind === 'image') this.canals[event.canal]?.purpose(event.body.image_id)
    if (MOVES_NOTHING.includes(event.kind)) return null
    // Holds for the tooth, whatever plan was on the screen.
    const emergency = this.emergencies.take(event)
    if (emergency !== undefined) return emergency ? null : 'nothing_asked'
    if (event.kind === 'replan') return this.replan(event)
    if (event.kind === 'revoked') return this.revoked(event)
    if (event.kind === 'struck') return this.struck(event)
    if (event.kind === 'take_over') return this.takenOver.take(event.actor) ? null : 'nothing_asked'
    if (event.kind === 'give_back') return this.takenOver.end(event.actor) ? null : 'nothing_asked'
    if (ofWork(event.kind) && this.takenOver.ended(event.actor)) return 'not_working'
    const ofVisit = this.takeVisit(event)
    if (ofVisit !== undefined) return ofVisit
    const canal = this.canals[event.canal]
    if (event.plan !== this.plan) return byAnotherPlan(event, canal)
    if (event.canal === '' || !canal) return event.canal === '' ? this.takeTooth(event) : 'no_canal'
    return this.takeCanal(event, canal)
  }

  /** Whatever plan stood: its stops may rest on what was struck. No stop rests on an image alone, but a word may. */
  private struck(event: CourseEvent): OutOfCourse | null {
    if (concernsImage(event)) return this.imagePutRight(event)
    const { canal } = event
    const course = this.canals[canal]
    if (!course) return 'no_canal'
    course.toPlan = true
    return null
  }

  /** Struck it counts in no canal; put to another one, not where it was. */
  private imagePutRight({ canal: was, body }: CourseEvent): null {
    const { moved_to } = body
    for (const [name, canal] of Object.entries(this.canals)) {
      if (typeof moved_to !== 'string' || (name === was && name !== moved_to)) canal.reopen(String(body.struck))
    }
    if (typeof moved_to === 'string') this.canals[moved_to]?.purpose(body.struck)
    return null
  }

  /** What is said of the visit holds for the tooth, whatever plan was on the screen; undefined for any other event. */
  private takeVisit(event: CourseEvent): OutOfCourse | null | undefined {
    switch (event.kind) {
      case 'close':
        if (!this.visit.close()) return 'closed'
        this.takenOver.end(this.takenOver.by)
        return null
      case 'reopen':
        return this.reopen(event)
      case 'on_site':
        if (event.notChecked === 'room') return 'not_checked'
        return this.visit.name(event) ? null : 'closed'
      case 'dam':
        return this.visit.isolate(event) ? null : 'closed'
      default:
        return undefined
    }
  }

  private takeTooth(event: CourseEvent): OutOfCourse | null {
    switch (event.kind) {
      case 'resume':
        return this.emergencies.resume(event) ? null : 'nothing_asked'
      case 'sign_off':
        return this.visit.signOff(event) ? null : 'nothing_asked'
      case 'release':
        return this.release(event)
      case 'ask':
      case 'come':
        return null
      default:
        return 'no_canal'
    }
  }

  private takeCanal(event: CourseEvent, canal: CanalCourse): OutOfCourse | null {
    switch (event.kind) {
      case 'step':
        return this.step(event, canal)
      case 'sign_off':
        return signOff(event, canal)
      case 'answer':
        return answer(event, canal)
      case 'reading':
        canal.toPlan = true
        return null
      case 'pause':
        canal.held ??= 'paused'
        return null
      case 'resume':
        return resume(event, canal)
      case 'turn':
        this.turnedTo = event.canal
        return null
      case 'ask':
        canal.asking = event.id
        return null
      case 'come':
        canal.coming = event.id
        return null
      case 'release':
        return this.takeTooth(event)
      default:
        return 'no_canal'
    }
  }

  private step(event: CourseEvent, canal: CanalCourse): OutOfCourse | null {
    const { walk } = canal
    const [missing] = this.missingBut(this.emergencies.halts(event.id))
    if (missing) return missing
    if (event.notChecked === 'depth') return 'not_checked'
    if (canal.held || canal.toPlan || !canal.released) return 'withheld'
    if (walk.at !== event.node) return 'other_step'
    if (canal.state === 'hold_point' || canal.state === 'waits') return 'withheld'
    const stop = walk.stop()
    const depth = depthOf(event)
    const { node } = walk
    if (!leave(canal, String(event.body.exit), depth)) return 'no_such_exit'
    canal.word = null
    if (node.kind === 'do' && node.action === 'image') canal.purpose(event.body.image_id)
    if (depth !== null && stop !== null && depth > stop) {
      canal.held = 'past_stop'
      canal.askedBy = event.id
    }
    return null
  }

  /** A plan's run sheets begin where the work stands; what is held or not released stays so. */
  private replan(event: CourseEvent): OutOfCourse | null {
    const sheets = this.plans[event.plan]
    if (!['', event.body.replaces].includes(this.plan) || !sheets) return 'other_plan'
    const before = this.canals
    this.plan = event.plan
    this.canals = begun(sheets)
    this.revokedBy = null
    for (const [name, canal] of Object.entries(this.canals)) {
      const old = before[name]
      if (!old) continue
      const { held, askedBy, released, asking, coming } = old
      Object.assign(canal, { held, askedBy, released, asking, coming })
    }
    return null
  }

  private revoked(event: CourseEvent): OutOfCourse | null {
    if (event.plan !== this.plan) return 'other_plan'
    this.revokedBy = event.id
    return null
  }

  /** The last decision says which canals may not be worked; all others may. */
  private release(event: CourseEvent): OutOfCourse | null {
    const leftOut = notReleased(event).map((one) => one.canal)
    for (const [name, canal] of Object.entries(this.canals)) canal.released = !leftOut.includes(name)
    return null
  }

  /**
   * Canals that were not found as they were left stay withheld, finished ones excepted. That a reference point has gone
   * holds also where another phone has opened the visit before.
   */
  private reopen(event: CourseEvent): OutOfCourse | null {
    const { as_left = [], found = [] } = event.body as Reopened
    const unfinished = Object.entries(this.canals).filter(([, canal]) => canal.state !== 'finished')
    const gone = found.filter((one) => one.reference_point).map((one) => one.canal)
    const moved = unfinished.filter(([name]) => gone.includes(name))
    for (const [, canal] of moved) canal.toPlan = true
    // The visit opens all the same where nobody knows who was in the room: then nobody was named.
    const nobody = event.notChecked === 'room' ? { supervisor_id: '' } : {}
    if (!this.visit.reopen({ ...event, body: { ...event.body, ...nobody } }))
      return moved.length > 0 ? null : 'nothing_asked'
    for (const [name, canal] of unfinished) {
      if (!as_left.includes(name) && !gone.includes(name)) canal.held ??= 'to_check'
    }
    return null
  }
}

function begun(sheets: Sheets): Record<string, CanalCourse> {
  const canals: Record<string, CanalCourse> = byName(
    Object.entries(sheets).map(([name, sheet]) => [name, new CanalCourse(sheet, () => canals)]),
  )
  return canals
}

function depthOf(event: CourseEvent): number | null {
  return typeof event.body.depth_um === 'number' ? event.body.depth_um : null
}

interface NotReleased {
  readonly canal: string
  readonly remark: string
  /** The returned canal that it joins with; empty where it was returned itself. */
  readonly joins: string
}

/** The canals that a supervisor's decision leaves out. */
export function notReleased(event: CourseEvent): readonly NotReleased[] {
  return Array.isArray(event.body.not_released) ? (event.body.not_released as NotReleased[]) : []
}
