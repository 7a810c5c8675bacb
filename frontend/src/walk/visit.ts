import type { CourseEvent } from './course-event'

export type Setting = 'block' | 'extracted' | 'clinic'
export type Dam = 'on' | 'off' | 'leaking'

/** What has to be there before any canal is worked. */
export type Prerequisite = 'closed' | 'halted' | 'dam_off' | 'nobody_on_site' | 'approval_lapsed' | 'revoked'

/** Nodes of a supervisor's word on a visit: that it was closed well; that the approval counts for another session. */
export const CHECK = 'visit/check'
export const RENEW = 'visit/renew'

/**
 * The visit within a course. A bench needs nobody in the room and no dam; there only closing and opening again count.
 * Each move says whether it moved anything.
 */
export class Visit {
  closed = false
  /** Id of the licensed clinician in the room. */
  onSite = ''
  /** As last said in this visit. */
  dam: Dam | null = null
  /** The approval counted until the last session ended. */
  lapsed = false
  /** Closed, and no supervisor has looked at it. */
  checkDue = false

  constructor(readonly setting: Setting) {}

  get clinic(): boolean {
    return this.setting === 'clinic'
  }

  /** The first is what a step is set aside for. */
  missing(halted: boolean): Prerequisite[] {
    const missing: Prerequisite[] = halted ? ['halted'] : []
    if (this.closed) return ['closed', ...missing]
    if (!this.clinic) return missing
    if (this.dam !== 'on') missing.push('dam_off')
    if (!this.onSite) missing.push('nobody_on_site')
    if (this.lapsed) missing.push('approval_lapsed')
    return missing
  }

  close(): boolean {
    if (this.closed) return false
    this.closed = true
    this.onSite = ''
    this.dam = null
    this.lapsed = this.clinic
    this.checkDue = this.clinic
    return true
  }

  reopen({ body }: CourseEvent): boolean {
    if (!this.closed) return false
    this.closed = false
    this.checkDue = false
    this.onSite = String(body.supervisor_id ?? '')
    this.dam = body.protected ? 'on' : null
    return true
  }

  /** Somebody else may come into the room in the middle of a visit. */
  name({ body }: CourseEvent): boolean {
    if (this.closed) return false
    this.onSite = String(body.supervisor_id ?? '')
    return true
  }

  isolate({ body }: CourseEvent): boolean {
    if (this.closed) return false
    this.dam = body.state as Dam
    return true
  }

  /** A supervisor's word on the visit. Returned, it stays due. */
  signOff({ node, body }: CourseEvent): boolean {
    if (node === CHECK && this.checkDue) this.checkDue = body.exit !== 'approved'
    else if (node === RENEW && this.lapsed && !this.closed) this.lapsed = body.exit !== 'approved'
    else return false
    return true
  }
}
