import type { Ready } from '@/store/outbox/emergency-store'
import { words } from '@/words/en'

type Advice = Ready['advice']

interface Props {
  /** What the plan brought along: it needs no connection. */
  advice: Advice
  about: 'emergency' | 'pause'
  what: string
}

/** What to do first, in order, and where each sentence is from. */
export function FirstSteps({ advice, about, what }: Props) {
  const steps = advice.filter((sentence) => sentence.about === about && sentence.key === what)
  if (steps.length === 0) return about === 'emergency' ? <p>{words.card.noFirst}</p> : null
  return (
    <>
      <ol class="first-steps" aria-label={words.emergency.firstSteps}>
        {steps.map(({ says }) => (
          <li key={says}>{says}</li>
        ))}
      </ol>
      <details class="small">
        <summary>{words.card.from}</summary>
        <ul class="stack close">
          {[...new Set(steps.map(({ source, know }) => `${source}. ${words.rationale.known(know)}`))].map((from) => (
            <li key={from}>{from}</li>
          ))}
        </ul>
      </details>
    </>
  )
}
