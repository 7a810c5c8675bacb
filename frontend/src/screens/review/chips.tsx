import { useEffect, useState } from 'preact/hooks'
import type { Plan } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { SHOWN_MS } from '@/parts/unhurry'
import type { Draft } from '@/store/session/drafts'
import { words } from '@/words/en'
import type { ReviewFields } from './review-fields'
import { moved, turned, verdictOf } from './verdicts'

interface Props {
  plan: Plan
  /** The plan that was drawn before. */
  before: Plan | undefined
  picked: string | undefined
  onPick: (canal: string) => void
  /** Nothing where the plan is no longer to be decided on. */
  draft: Draft<ReviewFields> | undefined
}

const SIGNS = { agreed: 'approved', change: 'returned' } as const

/** Under each column what moved in it, and the decision on it: a touch agrees, a second one returns it, a third opens it. */
export function Chips({ plan, before, picked, onPick, draft }: Props) {
  const [touched, setTouched] = useState<string>()
  useEffect(() => {
    if (touched === undefined) return undefined
    const timer = setTimeout(() => setTouched(undefined), SHOWN_MS)
    return () => clearTimeout(timer)
  }, [touched])
  const turn = (canal: string, of: Draft<ReviewFields>) => {
    // A double tap is one.
    if (touched === canal) return
    setTouched(canal)
    of.set(turned(of.fields.value, canal))
    onPick(canal)
  }
  return (
    <fieldset class="chips" aria-label={words.review.decide} style={{ '--columns': plan.canals.length }}>
      {plan.canals.map((canal) => {
        const name = canal.canal
        const verdict = draft && verdictOf(draft.fields.value, name)
        const changes = moved(
          canal,
          before?.canals.find((each) => each.canal === name),
        )
        return (
          <div key={name} class="chip-column">
            {changes.map((says) => (
              <span key={says} class="moved number">
                {says}
              </span>
            ))}
            {draft && verdict && (
              <button
                type="button"
                class="chip"
                data-verdict={verdict}
                data-picked={name === picked}
                aria-label={words.review.verdict(name, verdict)}
                aria-disabled={name === touched}
                onClick={() => turn(name, draft)}
              >
                {name} {verdict === 'open' ? '–' : <Sign name={SIGNS[verdict]} />}
              </button>
            )}
          </div>
        )
      })}
      {draft && <p class="small soft chips-how">{words.review.how}</p>}
    </fieldset>
  )
}
