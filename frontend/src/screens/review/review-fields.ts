import type { NewReview } from '@/api/shapes'

/** What is typed in a review. */
export interface ReviewFields {
  id: string
  note: string
  remarks: Record<string, string>
  /** Canals that an approval leaves out. */
  returned: readonly string[]
}

export function emptyReview(id: string): ReviewFields {
  return { id, note: '', remarks: {}, returned: [] }
}

/** Something is said: a plan cannot be returned without it. */
export function saysSomething({ note, remarks }: ReviewFields): boolean {
  return note.trim() !== '' || Object.values(remarks).some((text) => text.trim() !== '')
}

/** Canals that are returned alone and of which nothing is said: the student would not know what to change. */
export function unsaid({ remarks, returned }: ReviewFields): readonly string[] {
  return returned.filter((canal) => !remarks[canal]?.trim())
}

export function toReview({ id, note, remarks, returned }: ReviewFields, decision: NewReview['decision']): NewReview {
  const said = Object.entries(remarks).filter(([, text]) => text.trim() !== '')
  const alone = (canal: string) => decision === 'approved' && returned.includes(canal)
  return {
    id,
    decision,
    note: note.trim(),
    remarks: said.map(([canal, text]) => ({ canal, text: text.trim(), returned: alone(canal) })),
  }
}
