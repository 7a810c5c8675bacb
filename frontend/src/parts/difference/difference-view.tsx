import { words } from '@/words/en'
import type { Change } from './compare'
import './difference.css'

/** What changed, canal by canal: the old value struck through, the new one after it. */
export function DifferenceView({ changes }: { changes: readonly Change[] }) {
  if (changes.length === 0) return <p class="soft">{words.difference.nothing}</p>
  const canals = [...new Set(changes.map((change) => change.canal))]
  return (
    <>
      {canals.map((canal) => (
        <section key={canal} aria-label={canal ?? words.difference.tooth}>
          <h3 class="difference-of">{canal ?? words.difference.tooth}</h3>
          <ul class="difference">
            {changes
              .filter((change) => change.canal === canal)
              .map((change) => (
                <li key={change.what}>
                  {change.what} <FromTo from={change.from} to={change.to} />
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  )
}

/** The old value struck through, the new one after it; told apart by ear as well. */
export function FromTo({ from, to }: { from: string; to: string }) {
  return (
    <>
      <del>
        <span class="unseen">{words.difference.was}</span>
        {from}
      </del>{' '}
      <span aria-hidden="true">→</span>{' '}
      <ins>
        <span class="unseen">{words.difference.is}</span>
        {to}
      </ins>
    </>
  )
}
