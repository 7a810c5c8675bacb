import { words } from '@/words/en'
import './signs.css'

export type SignName = 'waiting' | 'approved' | 'returned' | 'caution' | 'stop' | 'note' | 'draft'

const SHAPES: Record<SignName, preact.JSX.Element> = {
  waiting: (
    <>
      <circle cx="8" cy="8" r="6" fill="none" stroke="currentColor" stroke-width="1.8" />
      <path d="M8 8V2a6 6 0 0 1 6 6z" fill="currentColor" />
    </>
  ),
  approved: <path d="M2.5 8.5 6.5 12.5 13.5 4" fill="none" stroke="currentColor" stroke-width="2.4" />,
  returned: (
    <>
      <path d="M3.6 6.2A5.2 5.2 0 1 1 3 9.6" fill="none" stroke="currentColor" stroke-width="2" />
      <path d="M2.2 2.4v4.8H7z" fill="currentColor" />
    </>
  ),
  caution: <path d="M8 1.5 15 14.5H1z" fill="currentColor" />,
  stop: <rect x="2" y="2" width="12" height="12" fill="currentColor" />,
  note: <circle cx="8" cy="8" r="4" fill="currentColor" />,
  draft: <circle cx="8" cy="8" r="5.6" fill="none" stroke="currentColor" stroke-width="1.8" stroke-dasharray="3 2.4" />,
}

/** A drawn sign; the word that belongs to it always stands beside it. */
export function Sign({ name }: { name: SignName }) {
  return (
    <svg class="sign" viewBox="0 0 16 16" aria-hidden="true" data-sign={name}>
      {SHAPES[name]}
    </svg>
  )
}

/** State told by sign and word, then by colour. */
export function Pill({ sign, children }: { sign: SignName; children?: preact.ComponentChildren }) {
  return (
    <span class="pill" data-sign={sign}>
      <Sign name={sign} />
      <span>{children ?? words.state[sign]}</span>
    </span>
  )
}
