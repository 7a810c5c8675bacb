import type { MarkingShown } from '@/api/shapes'
import { draftOf } from '@/panels/marks/draft-of'
import { MarkedList } from '@/panels/marks/marked-list'
import type { Marks } from '@/panels/marks/use-marks'
import { words } from '@/words/en'

/** What was marked on the image before, the latest first, with what it measures and how it differs from the one it corrects. */
export function Made({ caseId, markings, marks }: { caseId: string; markings: readonly MarkingShown[]; marks: Marks }) {
  if (markings.length === 0) return null
  return (
    <section class="stack">
      <h2>{words.marks.made}</h2>
      <MarkedList
        caseId={caseId}
        markings={markings}
        below={(marking) => (
          <div class="row wrap">
            {marking.readings.length > 0 && (
              <a class="button plain" href={`/cases/${caseId}/plan`}>
                {words.marks.inThePlan}
              </a>
            )}
            <button type="button" class="button plain" onClick={() => marks.begin(draftOf(marking))}>
              {words.marks.beginFrom(marking.number)}
            </button>
          </div>
        )}
      />
    </section>
  )
}
