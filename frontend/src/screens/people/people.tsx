import { useState } from 'preact/hooks'
import type { InvitationWithLink } from '@/api/shapes'
import { TextField } from '@/parts/fields'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { useInvited, usePeople } from '@/store/cache/people'
import { words } from '@/words/en'
import { HandOut, type LinksMade } from './hand-out'
import { Invite } from './invite'
import { OneInvited } from './one-invited'
import { OnePerson } from './one-person'
import './people.css'

/** Who belongs to the coordinator's programme, who is invited, and ways to invite, change and end. */
export function People() {
  const [links, setLinks] = useState<LinksMade>()
  return (
    <Page title={words.people.title} back={{ to: '/account', says: words.account.title }}>
      {links === undefined ? (
        <Invite onMade={setLinks} />
      ) : (
        <HandOut links={links} onDone={() => setLinks(undefined)} />
      )}
      <Invited onRenewed={(made) => setLinks({ made: [made], leftOut: 0 })} />
      <Here />
    </Page>
  )
}

function Invited({ onRenewed }: { onRenewed: (made: InvitationWithLink) => void }) {
  return (
    <section class="card stack" aria-label={words.people.invited}>
      <h2>{words.people.invited}</h2>
      <Seen of={useInvited()} rows={1}>
        {({ results }) =>
          results.length === 0 ? (
            <p class="soft">{words.people.invitedNone}</p>
          ) : (
            <ul class="ledger">
              {results.map((each) => (
                <li key={each.id}>
                  <OneInvited of={each} onRenewed={onRenewed} />
                </li>
              ))}
            </ul>
          )
        }
      </Seen>
    </section>
  )
}

function Here() {
  const [wanted, setWanted] = useState('')
  const like = (text: string) => text.toLowerCase().includes(wanted.trim().toLowerCase())
  return (
    <section class="card stack" aria-label={words.people.here}>
      <h2>{words.people.here}</h2>
      <TextField label={words.people.look} value={wanted} onInput={setWanted} autoComplete="off" />
      <Seen of={usePeople()}>
        {({ results }) => {
          const shown = results
            .filter((each) => like(each.person.name) || like(each.group))
            .sort((a, b) => a.person.name.localeCompare(b.person.name))
          return shown.length === 0 ? (
            <p class="soft">{words.people.none}</p>
          ) : (
            <ul class="ledger">
              {shown.map((each) => (
                <li key={each.person.id}>
                  <OnePerson of={each} />
                </li>
              ))}
            </ul>
          )
        }}
      </Seen>
    </section>
  )
}
