import type { NewReview } from '@/api/shapes'

/** What is typed in a review. */
export interface ReviewFields {
  id: string
  note: string
  remarks: Record<string, string>
}

export function emptyReview(id: string): ReviewFields {
  return { id, note: '', remarks: {} }
}

/** Something is said: a plan cannot be returned without it. */
export function saysSomething({ note, remarks }: ReviewFields): boolean {
  return note.trim() !== '' || Object.values(remarks).some((text) => text.trim() !== '')
}

export function toReview({ id, note, remarks }: ReviewFields, decision: NewReview['decision']): NewReview {
  const said = Object.entries(remarks).filter(([, text]) => text.trim() !== '')
  return { id, decision, note: note.trim(), remarks: said.map(([canal, text]) => ({ canal, text: text.trim() })) }
}
