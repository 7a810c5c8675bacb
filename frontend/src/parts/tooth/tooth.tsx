import type { ComponentChildren } from 'preact'
import './tooth.css'

/** The picture of a tooth, and under it or beside it what is said of the selected canal and of the tooth. */
export function Tooth({ board, children }: { board: ComponentChildren; children: ComponentChildren }) {
  return (
    <div class="tooth">
      {board && <div class="tooth-board">{board}</div>}
      <div class="stack tooth-beside">{children}</div>
    </div>
  )
}

interface PanelProps {
  canal: string
  /** Where its lengths are measured from. */
  from: string
  /** The number that matters most of it now, at the right. */
  number: ComponentChildren
  children: ComponentChildren
}

/** The selected canal alone. */
export function CanalPanel({ canal, from, number, children }: PanelProps) {
  return (
    <section class="card tooth-panel" aria-label={canal}>
      <header>
        <h2>{canal}</h2>
        <span class="small soft grow">{from}</span>
        {number}
      </header>
      {children}
    </section>
  )
}
