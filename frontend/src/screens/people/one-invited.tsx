import type { InvitationShown, InvitationWithLink } from '@/api/shapes'
import { Revoke } from '@/panels/revoke'
import { Sent } from '@/parts/sent'
import { renewInvitation, withdrawInvitation } from '@/store/cache/people'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

/** Whoever is invited, as others will know them. */
export const nameOf = (of: InvitationShown) => of.name || of.username || words.people.somebody

interface OneInvitedProps {
  of: InvitationShown
  onRenewed: (made: InvitationWithLink) => void
}

/** Who has a link, until when and by whom; another in its place, or none any more. */
export function OneInvited({ of, onRenewed }: OneInvitedProps) {
  const [sending, run] = useSending()
  const about = [
    words.people.role[of.role],
    ...(of.group ? [of.group] : []),
    words.people.until(words.date(of.ends_at)),
    words.people.byWhom(of.made_by?.name),
  ]
  return (
    <div class="stack close one-of-people">
      <h3>{nameOf(of)}</h3>
      <p class="small">{about.join(', ')}</p>
      <Sent sending={sending} />
      <button
        type="button"
        class="button plain"
        disabled={sending.state === 'busy'}
        onClick={() => void run(() => renewInvitation(of.id).then(onRenewed))}
      >
        {words.people.newLink(nameOf(of))}
      </button>
      <Revoke name={nameOf(of)} revoke={() => withdrawInvitation(of.id)} says={words.people.withdraw} />
    </div>
  )
}
