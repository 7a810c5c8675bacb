import { EmergencyDoor } from '@/panels/emergency/emergency-door'
import { Page } from '@/parts/page'
import { words } from '@/words/en'

/** In place of a case, where what this person recorded and did not send cannot be read; an emergency can be told. */
export function NoWork({ caseId }: { caseId: string | undefined }) {
  return (
    <Page title={words.phone.noWork.title} back={{ to: '/', says: words.back }}>
      {caseId && <EmergencyDoor caseId={caseId} />}
      <p>{words.phone.noWork.says}</p>
    </Page>
  )
}
