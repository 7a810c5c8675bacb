import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { useCases } from '@/store/cases'
import { words } from '@/words/en'
import { AccountLink } from '../account/account-link'
import { CaseRow } from './case-row'
import '@/parts/list.css'

/** The cases of the programme that the reader may see, newest first. */
export function Cases() {
  const cases = useCases()
  return (
    <Page title={words.cases.title} aside={<AccountLink />} foot={<NewCase />}>
      <Seen of={cases} rows={4}>
        {(list) =>
          list.length === 0 ? (
            <div class="stack empty">
              <h2>{words.cases.empty}</h2>
              <p>{words.cases.emptySays}</p>
            </div>
          ) : (
            <ul class="ledger">
              {list.map((one) => (
                <li key={one.id}>
                  <CaseRow of={one} />
                </li>
              ))}
            </ul>
          )
        }
      </Seen>
    </Page>
  )
}

function NewCase() {
  return (
    <a class="button main" href="/cases/new">
      {words.cases.newCase}
    </a>
  )
}
