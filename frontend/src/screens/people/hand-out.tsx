import { useState } from 'preact/hooks'
import type { InvitationWithLink } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { words } from '@/words/en'
import { nameOf } from './one-invited'

export interface LinksMade {
  made: readonly InvitationWithLink[]
  leftOut: number
}

/** Links, this once: copied one by one, or all as lines for a table. */
export function HandOut({ links: { made, leftOut }, onDone }: { links: LinksMade; onDone: () => void }) {
  const [copied, setCopied] = useState<string | false>()
  const copy = (what: string, text: string) =>
    navigator.clipboard.writeText(text).then(
      () => setCopied(what),
      () => setCopied(false),
    )
  const all = made.map(({ invitation, link }) => `${nameOf(invitation)}\t${link}`).join('\n')
  return (
    <section class="card stack" aria-label={words.people.links}>
      <h2>{words.people.links}</h2>
      <Notice sign="caution">{words.people.linksSay}</Notice>
      {leftOut > 0 && <p>{words.people.leftOut(leftOut)}</p>}
      {copied === false && <Notice>{words.people.notCopied}</Notice>}
      <ul class="ledger">
        {made.map(({ invitation, link }) => (
          <li key={invitation.id}>
            <div class="stack close one-of-people">
              <h3>{nameOf(invitation)}</h3>
              <code class="link-text">{link}</code>
              <button type="button" class="button answer" onClick={() => void copy(invitation.id, link)}>
                {copied === invitation.id ? words.people.copied : words.people.copy(nameOf(invitation))}
              </button>
            </div>
          </li>
        ))}
      </ul>
      {made.length > 1 && (
        <button type="button" class="button answer" onClick={() => void copy('all', all)}>
          {copied === 'all' ? words.people.copied : words.people.copyAll}
        </button>
      )}
      <button type="button" class="button" onClick={onDone}>
        {words.people.done}
      </button>
    </section>
  )
}
