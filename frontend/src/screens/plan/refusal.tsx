import { Notice } from '@/parts/notice'
import type { Preview } from '@/store/cache/plans'
import { words } from '@/words/en'

/** Why there is no new plan: refused with the planner's sentences, or not computed yet. */
export function Refusal({ preview, caseId }: { preview: Preview & { again: () => void }; caseId: string }) {
  if (preview.state === 'offline') {
    return (
      <Notice sign="caution" action={{ says: words.tryAgain, onDo: preview.again }}>
        {words.planning.notComputed}
      </Notice>
    )
  }
  if (preview.state !== 'refused' || !preview.problem) return null
  return preview.problem.besides([]).map((sentence) => (
    <Notice key={sentence} sign="stop">
      <p>{sentence}</p>
      <p>
        <a href={`/cases/${caseId}`}>{words.planning.toTheCase}</a>
      </p>
    </Notice>
  ))
}
