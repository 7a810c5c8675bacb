import { words } from '@/words/en'
import { Notice } from './notice'

interface SentProps {
  sending: {
    readonly state: string
    readonly crowded?: boolean
    readonly leave?: () => void
    readonly problem?: { readonly code: string; besides(fields: readonly string[]): string[] }
  }
  /** Fields of the form that show their own sentence. */
  fields?: readonly string[]
  again?: (() => void) | undefined
}

/** How sending went, where it was sent from. */
export function Sent({ sending, fields = [], again }: SentProps) {
  if (sending.state === 'unsent') {
    return (
      <Notice sign="caution" action={again && { says: words.tryAgain, onDo: again }}>
        {words.notSent}
      </Notice>
    )
  }
  if (sending.crowded) {
    return (
      <Notice sign="waiting" action={sending.leave && { says: words.stopWaiting, onDo: sending.leave }}>
        {words.crowded}
      </Notice>
    )
  }
  const { problem } = sending
  if (sending.state !== 'refused' || !problem) return null
  const sentences = problem.code === 'id-used-differently' ? [words.arrivedBefore] : problem.besides(fields)
  return sentences.map((sentence) => (
    <Notice key={sentence} sign="stop">
      {sentence}
    </Notice>
  ))
}
