import { words } from '@/words/en'

/** To everything that was planned, done and decided in a case. */
export function RecordLink({ caseId }: { caseId: string }) {
  return (
    <a class="button plain" href={`/cases/${caseId}/record`}>
      {words.record.open}
    </a>
  )
}
