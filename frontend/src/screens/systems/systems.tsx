import type { ComponentChildren } from 'preact'
import type { ClientShown } from '@/api/shapes'
import { Revoke } from '@/panels/revoke'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { revokeClient, useClients, usePlatforms, useWebhooks } from '@/store/cache/systems'
import { words } from '@/words/en'
import { OnePlatform } from './one-platform'
import { OneWebhook } from './one-webhook'

/** What a coordinator's programme works with: how each stands, and a way to end it. */
export function Systems() {
  return (
    <Page title={words.worklist.systems} back={{ to: '/account/keys', says: words.account.keys }}>
      <Kind title={words.systems.webhooks} says={words.systems.webhooksSay} of={useWebhooks()}>
        {(each) => <OneWebhook of={each} />}
      </Kind>
      <Kind title={words.systems.clients} says={words.systems.clientsSay} of={useClients()}>
        {(each) => <OneClient of={each} />}
      </Kind>
      <Kind title={words.systems.platforms} says={words.systems.platformsSay} of={usePlatforms()}>
        {(each) => <OnePlatform of={each} />}
      </Kind>
    </Page>
  )
}

interface KindProps<T> {
  title: string
  says: string
  of: Parameters<typeof Seen<{ results: T[] }>>[0]['of']
  children: (each: T) => ComponentChildren
}

function Kind<T extends { id: string }>({ title, says, of, children }: KindProps<T>) {
  return (
    <section class="card stack" aria-label={title}>
      <h2>{title}</h2>
      <p>{says}</p>
      <Seen of={of} rows={1}>
        {({ results }) =>
          results.length === 0 ? (
            <p class="soft">{words.systems.none}</p>
          ) : (
            <ul class="ledger">
              {results.map((each) => (
                <li key={each.id}>{children(each)}</li>
              ))}
            </ul>
          )
        }
      </Seen>
    </section>
  )
}

/** What a client may, for whom it acts; revoked in two taps, as nothing brings it back. */
function OneClient({ of }: { of: ClientShown }) {
  return (
    <div class="stack close one-system">
      <h3>{of.name}</h3>
      <p class="small">{of.scopes.map((scope) => words.keys.scope[scope]).join('; ')}</p>
      <p class="small soft">{[words.systems.actsFor[of.acts_for], words.keys.madeBy(of.made_by.name)].join(', ')}</p>
      <Revoke name={of.name} revoke={() => revokeClient(of.id)} />
    </div>
  )
}
