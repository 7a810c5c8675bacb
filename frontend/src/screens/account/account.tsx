import { useEffect, useState } from 'preact/hooks'
import { Unreachable } from '@/api/problem'
import { Choice } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { go } from '@/router'
import { type Hand, hand, type Scheme, scheme, setHand } from '@/store/device/preferences'
import { countWaiting } from '@/store/outbox/pending-readings'
import { stopPush } from '@/store/session/push'
import { membership, session, signOut, workIn } from '@/store/session/session'
import { words } from '@/words/en'
import { Codes } from './codes'
import { Notified } from './notified'

const HANDS: readonly Hand[] = ['right', 'left']
const SCHEMES: readonly Scheme[] = ['as the phone', 'light', 'dark']

/** What is shown is all of one programme: the app begins anew in the other one. */
const turnTo = (programme: string) => workIn(programme).then(() => location.assign('/'))

/** Who is signed in, light or dark, and the way out. */
export function Account() {
  const [wrong, setWrong] = useState<string>()
  const [waits, setWaits] = useState<number>()
  useEffect(() => void countWaiting().then(setWaits, () => undefined), [])
  const leave = async () => {
    try {
      // Whoever signs in next must not be told what was meant for this one.
      await stopPush().catch(() => undefined)
      await signOut()
      go('/', { replace: true })
    } catch (error) {
      setWrong(error instanceof Unreachable ? words.signIn.unreachable : words.failed)
    }
  }
  const of = membership.value
  const others = session.value?.memberships.filter(({ programme }) => programme.id !== of?.programme.id) ?? []
  return (
    <Page title={words.account.title} back={{ to: '/', says: words.back }}>
      <div class="stack close">
        <h2>{session.value?.person.name}</h2>
        {of && (
          <p class="soft">
            {of.role}, {of.programme.name}
          </p>
        )}
      </div>
      {others.map(({ programme }) => (
        <button key={programme.id} type="button" class="button" onClick={() => void turnTo(programme.id)}>
          {words.account.workIn(programme.name)}
        </button>
      ))}
      <Choice
        label={words.scheme.label}
        value={scheme.value}
        options={SCHEMES.map((value) => ({ value, says: words.scheme[value] }))}
        onChoose={(value) => {
          scheme.value = value
        }}
      />
      <Choice
        label={words.hand.label}
        value={hand.value}
        options={HANDS.map((value) => ({ value, says: words.hand[value] }))}
        onChoose={setHand}
      />
      {of?.role === 'supervisor' && <Codes />}
      {of?.role === 'supervisor' && <Notified />}
      {of?.role === 'coordinator' && (
        <a class="button" href="/account/people">
          {words.account.people}
        </a>
      )}
      <a class="button" href="/account/keys">
        {words.account.keys}
      </a>
      <ul class="stack points">
        {words.notice.points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
      {waits !== undefined && <p class={waits > 0 ? 'strong' : 'soft'}>{words.phone.unsent(waits)}</p>}
      {wrong && <Notice sign="stop">{wrong}</Notice>}
      <button type="button" class="button answer" onClick={() => void leave()}>
        {words.account.signOut}
      </button>
    </Page>
  )
}
