import type { VersionShown } from '@/api/shapes'
import { revoke } from '@/store/cache/review'
import { membership, personId } from '@/store/session/session'
import { words } from '@/words/en'
import { WithReason } from './with-reason'

/** The way to withdraw an approval that stands, for whoever may. */
export function Revoke({ of }: { of: VersionShown }) {
  if (of.state !== 'approved' || !mayRevoke(of)) return null
  const name = `revoke ${of.id} ${of.revocations.length}`
  return <WithReason key={name} name={name} says={words.revoke} onSend={(body) => revoke(of, body)} />
}

/** Whoever gave the approval, or a coordinator; one that was carried over the server knows the giver of. */
function mayRevoke({ reviews, carried_from }: VersionShown): boolean {
  const role = membership.value?.role
  const giver = reviews.findLast((review) => review.decision === 'approved')?.supervisor.id
  return role === 'coordinator' || (role === 'supervisor' && (giver === personId() || carried_from !== null))
}
