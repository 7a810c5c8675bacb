import type { Prerequisite, Setting } from '@/api/shapes'
import type { PayloadOf } from './course-event'

type Dam = PayloadOf<'dam'>['state']

/** Nodes of a supervisor's sign-off of a visit: that it was closed well; that the approval counts for another session. */
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
  /** The approval ended with the last session and has to be renewed. */
  lapsed = false
  /** Closed, and no supervisor has looked at it. */
  checkDue = false

  constructor(readonly setting: Setting) {}

  get clinic(): boolean {
    return this.setting === 'clinic'
  }

  /** What is missing before any canal is worked; the first of it is the reason for which a step is set aside. */
  missing(halted: boolean): Prerequisite[] {
    const missing: Prerequisite[] = halted ? ['halted'] : []
    // With the visit closed nobody is in the room and no dam is on: that needs no saying.
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
    // In the clinic an approval counts for one session, and a supervisor looks at what was closed; a bench needs neither.
    this.lapsed = this.clinic
    this.checkDue = this.clinic
    return true
  }

  reopen(onSite: string, isProtected: boolean): boolean {
    if (!this.closed) return false
    this.closed = false
    this.checkDue = false
    this.onSite = onSite
    this.dam = isProtected ? 'on' : null
    return true
  }

  /** Somebody else may come into the room in the middle of a visit. */
  name(onSite: string): boolean {
    if (this.closed) return false
    this.onSite = onSite
    return true
  }

  isolate(state: Dam): boolean {
    if (this.closed) return false
    this.dam = state
    return true
  }

  /** A supervisor's sign-off of the visit. Returned, it stays due. */
  signOff(node: string, exit: PayloadOf<'sign_off'>['exit']): boolean {
    if (node === CHECK && this.checkDue) this.checkDue = exit !== 'approved'
    else if (node === RENEW && this.lapsed && !this.closed) this.lapsed = exit !== 'approved'
    else return false
    return true
  }
}
