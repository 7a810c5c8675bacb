import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'

interface Props {
  says: ComponentChildren
  children: ComponentChildren
}

/** What is there for whoever opens it, and costs nothing before. */
export function Fold({ says, children }: Props) {
  const [open, setOpen] = useState(false)
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{says}</summary>
      {open && <div class="stack">{children}</div>}
    </details>
  )
}
