import type { ComponentChildren } from 'preact'
import { words } from '@/words/en'

interface Props {
  /** Further classes. */
  also?: string
  children: ComponentChildren
}

/** What a step, or a supervisor, can be answered with. */
export function StepAnswers({ also, children }: Props) {
  return (
    <fieldset class={also ? `step-answers ${also}` : 'step-answers'} aria-label={words.chair.answers}>
      {children}
    </fieldset>
  )
}
