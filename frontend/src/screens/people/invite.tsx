import { useState } from 'preact/hooks'
import type { Invited } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { invite } from '@/store/cache/people'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import type { LinksMade } from './hand-out'
import { InviteOne } from './invite-one'
import { TakeIn } from './take-in'

/** Inviting one person, or those of a list. */
export function Invite({ onMade }: { onMade: (links: LinksMade) => void }) {
  const [how, setHow] = useState<'one' | 'list'>()
  const [sending, run] = useSending()
  const send = (people: Invited[]) =>
    void run(async () => {
      const { made, left_out } = await invite(people)
      onMade({ made, leftOut: left_out.length })
    })
  return (
    <section class="card stack" aria-label={words.people.invite}>
      <h2>{words.people.invite}</h2>
      <div class="row">
        {(['one', 'list'] as const).map((each) => (
          <button
            key={each}
            type="button"
            class="button"
            aria-expanded={how === each}
            onClick={() => setHow(how === each ? undefined : each)}
          >
            {words.people[each]}
          </button>
        ))}
      </div>
      {how === 'one' && <InviteOne sending={sending} send={send} />}
      {how === 'list' && <TakeIn sending={sending} send={send} />}
      {sending.state === 'unsent' && <Notice sign="caution">{words.people.lost}</Notice>}
      {sending.state !== 'unsent' && how === 'list' && <Sent sending={sending} />}
    </section>
  )
}
