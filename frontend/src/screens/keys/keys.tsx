import { useState } from 'preact/hooks'
import type { KeyShown, KeyWithText, Scope } from '@/api/shapes'
import { Revoke } from '@/panels/revoke'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { type KeysKept, ownKeys, serviceKeys } from '@/store/cache/keys'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { MadeOnce, MakeKey } from './make-key'
import './keys.css'

const SCOPES = Object.keys(words.keys.scope) as Scope[]
// The server refuses these to a service too: they are a person's own word.
const OF_SERVICES = SCOPES.filter((scope) => scope !== 'reviews:write' && scope !== 'events:write')

/** The keys by which programs sign in: of the reader's own scripts, and for the coordinator of the programme's services. */
export function Keys() {
  return (
    <Page title={words.account.keys} back={{ to: '/account', says: words.account.title }}>
      <KeysOf kept={ownKeys} kind="own" says={words.keys.ownSays} scopes={SCOPES} />
      {membership.value?.role === 'coordinator' && (
        <KeysOf kept={serviceKeys} kind="services" says={words.keys.servicesSay} scopes={OF_SERVICES} />
      )}
      {membership.value?.role === 'coordinator' && (
        <a class="button" href="/account/systems">
          {words.worklist.systems}
        </a>
      )}
      <a class="button" href="/oauth/consents" target="_self">
        {words.keys.consents}
      </a>
    </Page>
  )
}

interface KeysOfProps {
  kept: KeysKept
  kind: 'own' | 'services'
  says: string
  scopes: readonly Scope[]
}

function KeysOf({ kept, kind, says, scopes }: KeysOfProps) {
  const [doing, setDoing] = useState<'making' | KeyWithText>()
  return (
    <section class="card stack" aria-label={words.keys[kind]}>
      <h2>{words.keys[kind]}</h2>
      <p>{says}</p>
      <Seen of={kept.use()} rows={1}>
        {({ results }) =>
          results.length === 0 ? (
            <p class="soft">{words.keys.none}</p>
          ) : (
            <ul class="ledger">
              {results.map((key) => (
                <li key={key.id}>
                  <OneKey of={key} byWhom={kind === 'services'} revoke={kept.revoke} />
                </li>
              ))}
            </ul>
          )
        }
      </Seen>
      {doing === undefined ? (
        <button type="button" class="button answer" onClick={() => setDoing('making')}>
          {words.keys.make}
        </button>
      ) : doing === 'making' ? (
        <MakeKey
          label={words.keys.name[kind]}
          scopes={scopes}
          make={async (body) => setDoing(await kept.make(body))}
          onStop={() => setDoing(undefined)}
        />
      ) : (
        <MadeOnce text={doing.text} onDone={() => setDoing(undefined)} />
      )}
    </section>
  )
}

interface OneKeyProps {
  of: KeyShown
  /** Says who made it, where that need not be the reader. */
  byWhom: boolean
  revoke: (id: string) => Promise<void>
}

/** What a key may, until when, and when it was used last; revoked in two taps, as nothing brings it back. */
function OneKey({ of, byWhom, revoke }: OneKeyProps) {
  const over = new Date(of.ends_at) <= new Date()
  const about = [
    words.keys.endsOn(words.date(of.ends_at), over),
    words.keys.used(of.last_used_at && words.when(of.last_used_at)),
    ...(byWhom ? [words.keys.madeBy(of.made_by.name)] : []),
  ]
  return (
    <div class="stack close one-key">
      <h3>{of.name}</h3>
      <p class="small">{of.scopes.map((scope) => words.keys.scope[scope]).join('; ')}</p>
      <p class={over ? 'small strong' : 'small soft'}>{about.join(', ')}</p>
      <Revoke name={of.name} revoke={() => revoke(of.id)} />
    </div>
  )
}
