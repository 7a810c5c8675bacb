import type { Caution, NewReview, Plan } from '@/api/shapes'
import { wrongOf } from '@/parts/bounds'
import { readMm } from '@/units/millimetres'
import { own } from '@/walk/own'

/** What is typed in a review. */
export interface ReviewFields {
  id: string
  note: string
  remarks: Record<string, string>
  /** Canals that an approval leaves out. */
  returned: readonly string[]
  /** Canals that are agreed to. */
  agreed?: readonly string[]
  /** What the supervisor measured beside the plan, as typed. */
  lengths?: Record<string, string>
  /** Names of what must be put right and was seen. A review that was begun by an older app has none. */
  acknowledged?: readonly string[]
}

/** The name of what must be put right: its code and canal. */
const nameOf = ({ code, canal }: Pick<Caution, 'code' | 'canal'>) => JSON.stringify([code, canal])

/** All in a plan that must be put right and was not let pass, by name; each once. */
export function toAcknowledge({ cautions }: Pick<Plan, 'cautions'>): ReadonlyMap<string, Caution> {
  const bars = cautions.filter((caution) => caution.severity === 'stop' && caution.overridden == null)
  return new Map(bars.map((bar) => [nameOf(bar), bar]))
}

export function emptyReview(id: string): ReviewFields {
  return { id, note: '', remarks: {}, returned: [], agreed: [], acknowledged: [] }
}

/** Something is said: a plan cannot be returned without it. */
export function saysSomething({ note, remarks }: ReviewFields): boolean {
  return note.trim() !== '' || Object.values(remarks).some((text) => text.trim() !== '')
}

/** Canals that are returned alone and of which nothing is said: the student would not know what to change. */
export function unsaid({ remarks, returned }: ReviewFields): readonly string[] {
  return returned.filter((canal) => !own(remarks, canal)?.trim())
}

/** The canal of a length of one's own that can be no length, and what is wrong with it. */
export function wrongLength({ lengths = {} }: ReviewFields): string | undefined {
  const wrong = Object.entries(lengths).find(([, typed]) => typed.trim() !== '' && wrongOf('length', typed))
  return wrong && `${wrong[0]}: ${wrongOf('length', wrong[1])}`
}

export function toReview(fields: ReviewFields, decision: NewReview['decision']): NewReview {
  const { id, note, remarks, returned, lengths = {}, acknowledged = [] } = fields
  const own_lengths = Object.entries(lengths).flatMap(([canal, typed]) => {
    const length_mm = readMm(typed)
    return length_mm === undefined ? [] : { canal, length_mm }
  })
  const said = Object.entries(remarks).filter(([, text]) => text.trim() !== '')
  const alone = (canal: string) => decision === 'approved' && returned.includes(canal)
  return {
    id,
    decision,
    note: note.trim(),
    remarks: said.map(([canal, text]) => ({ canal, text: text.trim(), returned: alone(canal) })),
    acknowledged: decision === 'approved' ? acknowledged.map(named) : [],
    own_lengths,
  }
}

function named(name: string): { code: string; canal: string | null } {
  const [code, canal] = JSON.parse(name) as [string, string | null]
  return { code, canal }
}
