import type { Chair } from '@/store/chair'
import { words } from '@/words/en'
import { adviceOf } from './at-hand'

/** What to do first, in order, and where each sentence is from. The plan brought it along: it needs no connection. */
export function FirstSteps({ chair, about, what }: { chair: Chair; about: 'emergency' | 'pause'; what: string }) {
  const steps = adviceOf(chair, about, what)
  if (steps.length === 0) return about === 'emergency' ? <p>{words.card.noFirst}</p> : null
  return (
    <>
      <ol class="first-steps">
        {steps.map(({ says }) => (
          <li key={says}>{says}</li>
        ))}
      </ol>
      <details class="small">
        <summary>{words.card.from}</summary>
        <ul class="stack close">
          {[...new Set(steps.map(({ source, know }) => `${source}. ${words.why.known(know)}`))].map((from) => (
            <li key={from}>{from}</li>
          ))}
        </ul>
      </details>
    </>
  )
}
