import { useState } from 'preact/hooks'
import type { CasePage } from '@/api/shapes'
import { AccountLink } from '@/panels/account-link'
import { CaseRow } from '@/panels/case-row'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { Sent } from '@/parts/sent'
import { olderCases, useCases } from '@/store/cache/cases'
import { useSending } from '@/store/forms/sending'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { LeftOverList } from './left-over'
import '@/parts/list.css'

const OLD_S = 300 // the list is asked for when it is opened and looked at, not every few seconds

/** The cases of the programme that the reader may see, newest first. */
export function Cases() {
  const cases = useCases()
  return (
    <Page title={words.cases.title} aside={<AccountLink />} foot={<Foot />}>
      <LeftOverList cases={cases.value?.results ?? []} />
      <Seen of={cases} rows={4} old_s={OLD_S}>
        {(page) => (page.results.length === 0 ? <Nothing /> : <List key={page.next} first={page} />)}
      </Seen>
    </Page>
  )
}

function List({ first }: { first: CasePage }) {
  const [older, setOlder] = useState<CasePage[]>([])
  const [sending, run] = useSending()
  const pages = [first, ...older]
  const next = pages.at(-1)?.next
  const load = () => void run(async () => next && setOlder([...older, await olderCases(next)]))
  return (
    <>
      <ul class="ledger">
        {pages
          .flatMap((page) => page.results)
          .map((row) => (
            <li key={row.id}>
              <CaseRow of={row} />
            </li>
          ))}
      </ul>
      <Sent sending={sending} />
      {next && (
        <button type="button" class="button" disabled={sending.state === 'busy'} onClick={load}>
          {words.cases.more}
        </button>
      )}
    </>
  )
}

function Nothing() {
  return (
    <div class="stack empty">
      <h2>{words.cases.empty}</h2>
      <p>{words.cases.emptySays}</p>
    </div>
  )
}

function Foot() {
  const student = membership.value?.role === 'student'
  if (!student)
    return (
      <a class="button answer" href="/worklist">
        {words.worklist.title}
      </a>
    )
  return (
    <div class="row">
      <a class="button answer" href="/practice">
        {words.cases.practice}
      </a>
      <a class="button main grow" href="/cases/new">
        {words.cases.newCase}
      </a>
    </div>
  )
}
