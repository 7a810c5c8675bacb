import { useState } from 'preact/hooks'
import type { CaseListed } from '@/api/shapes'
import { SetAside } from '@/panels/set-aside'
import { Notice } from '@/parts/notice'
import { countOf, fileOf, type LeftOver, refusedOf, saveElsewhere, useLeftOver } from '@/store/outbox/left-over'
import { sendAgain } from '@/store/outbox/sender'
import { words } from '@/words/en'

/** What this phone still holds, case by case: how much, since when, and why. */
export function LeftOverList({ cases }: { cases: readonly CaseListed[] }) {
  const left = useLeftOver()
  const [open, setOpen] = useState(false)
  if (left.length === 0) return null
  return (
    <section class="stack left-over" aria-label={words.leftOver.title}>
      <h2>{words.leftOver.title}</h2>
      {left.map((kept) => (
        <OfCase key={kept.caseId} of={kept} known={cases.find((listed) => listed.id === kept.caseId)} />
      ))}
      <button type="button" class="button" onClick={() => setOpen(!open)} aria-expanded={open}>
        {words.leftOver.save}
      </button>
      {open && (
        <Notice action={{ says: words.leftOver.saveNow, onDo: () => void saveElsewhere(fileOf(left)) }}>
          {words.leftOver.saveSays}
        </Notice>
      )}
    </section>
  )
}

function OfCase({ of, known }: { of: LeftOver; known: CaseListed | undefined }) {
  const refused = of.work.find((entry) => entry.refused !== undefined)
  const why = refusedOf(of)
  return (
    <div class="stack close">
      <p>
        <a href={`/cases/${of.caseId}`}>
          <b>{known ? `${known.tooth.iso} ${known.patient_alias}` : words.leftOver.notListed}</b>
        </a>{' '}
        {words.leftOver.waits(countOf(of), words.when(of.since))}
      </p>
      {why !== undefined && <Notice sign="stop">{words.leftOver.refused(why)}</Notice>}
      {refused && (
        <div class="row wrap">
          <button type="button" class="button" onClick={() => void sendAgain(refused)}>
            {words.tryAgain}
          </button>
          <SetAside of={refused} />
        </div>
      )}
    </div>
  )
}
