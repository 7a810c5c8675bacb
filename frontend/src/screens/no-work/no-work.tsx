import { Page } from '@/parts/page'
import { words } from '@/words/en'

/** In place of a case, where what this person recorded and did not send cannot be read. */
export function NoWork() {
  return (
    <Page title={words.phone.noWork.title} back={{ to: '/', says: words.back }}>
      <p>{words.phone.noWork.says}</p>
    </Page>
  )
}
