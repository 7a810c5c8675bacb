import type { WebhookShown } from '@/api/shapes'
import { AccountLink } from '@/panels/account-link'
import { WaitingRows } from '@/panels/plan/waiting-plans'
import { OLD_S } from '@/parts/as-of'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { go } from '@/router'
import { useRunning, useWaiting } from '@/store/cache/review'
import { useWebhooks } from '@/store/cache/systems'
import { membership } from '@/store/session/session'
import { hostOf } from '@/units/addresses'
import { words } from '@/words/en'
import { RunningWork } from './running-work'
import './worklist.css'

/** What waits for a supervisor, the most urgent first: emergencies, sign-offs at the chair, plans; then the work that goes on. */
export function Worklist() {
  const running = useRunning()
  const waiting = useWaiting()
  // What has come never moves: whoever reaches for a row would hit another one. What stands above comes first.
  const chairsHere = isHere(running)
  const plansHere = isHere(waiting)
  const webhooks = useWebhooks()
  const systemsHere = webhooks.name === undefined || isHere(webhooks)
  return (
    <Page title={words.worklist.title} aside={<AccountLink />} foot={<AllCases />} wide>
      <GivenUp webhooks={webhooks.value?.results ?? []} />
      <div class="worklist">
        <div class="stack close chairs-as-of">
          <Seen of={running} rows={4} old_s={OLD_S} what={words.worklist.chairs}>
            {() => null}
          </Seen>
        </div>
        {systemsHere && chairsHere && (
          <>
            <div class="stack close plans-as-of">
              <Seen of={waiting} rows={0} old_s={OLD_S} what={words.worklist.plans}>
                {() => null}
              </Seen>
            </div>
            <RunningWork of={running.value} group="halted" />
            <RunningWork of={running.value} group="waits" />
            <section class="stack plans-that-wait">
              <h2>{words.worklist.plans}</h2>
              {waiting.value && <WaitingRows {...waiting.value} />}
            </section>
            {plansHere && <RunningWork of={running.value} group="going" />}
          </>
        )}
      </div>
    </Page>
  )
}

const isHere = ({ value, state }: { value?: unknown; state: string }) => value !== undefined || state !== 'asking'

/** A line for each system that is told nothing any more, and where to let it go on. */
function GivenUp({ webhooks }: { webhooks: readonly WebhookShown[] }) {
  return (
    <>
      {webhooks
        .filter(({ state }) => state === 'given_up')
        .map(({ id, address, given_up_at }) => (
          <Notice key={id} action={{ says: words.worklist.systems, onDo: () => go('/account/systems') }}>
            {words.worklist.gaveUp(hostOf(address), words.when(given_up_at ?? ''))} {words.worklist.gaveUpWay}
          </Notice>
        ))}
    </>
  )
}

function AllCases() {
  return (
    <div class="row">
      {membership.value?.role === 'supervisor' && (
        <a class="button answer" href="/practice">
          {words.cases.practice}
        </a>
      )}
      <a class="button answer grow" href="/cases">
        {words.worklist.allCases}
      </a>
    </div>
  )
}
