import { AccountLink } from '@/panels/account-link'
import { WaitingRows } from '@/panels/plan/waiting-plans'
import { OLD_S } from '@/parts/as-of'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { useRunning, useWaiting } from '@/store/cache/review'
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
  return (
    <Page title={words.worklist.title} aside={<AccountLink />} foot={<AllCases />} wide>
      <div class="worklist">
        <div class="stack close chairs-as-of">
          <Seen of={running} rows={4} old_s={OLD_S} what={words.worklist.chairs}>
            {() => null}
          </Seen>
        </div>
        {chairsHere && (
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

function AllCases() {
  return (
    <a class="button answer" href="/cases">
      {words.worklist.allCases}
    </a>
  )
}
