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
  return (
    <Page title={words.worklist.title} aside={<AccountLink />} foot={<AllCases />} wide>
      <div class="worklist">
        <div class="stack close chairs-as-of">
          <Seen of={running} rows={2} old_s={OLD_S} what={words.worklist.chairs}>
            {() => null}
          </Seen>
        </div>
        <div class="stack close plans-as-of">
          <Seen of={waiting} rows={2} old_s={OLD_S} what={words.worklist.plans}>
            {() => null}
          </Seen>
        </div>
        <RunningWork of={running.value} group="halted" />
        <RunningWork of={running.value} group="waits" />
        <section class="stack plans-that-wait">
          <h2>{words.worklist.plans}</h2>
          {waiting.value && <WaitingRows {...waiting.value} />}
        </section>
        <RunningWork of={running.value} group="going" />
      </div>
    </Page>
  )
}

function AllCases() {
  return (
    <a class="button answer" href="/cases">
      {words.worklist.allCases}
    </a>
  )
}
