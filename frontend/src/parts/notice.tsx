import { Sign, type SignName } from './signs'
import './notice.css'

interface NoticeProps {
  sign?: SignName
  children: preact.ComponentChildren
  action?: { says: string; onDo: () => void } | undefined
}

/** Something the reader must know where they are: a sentence, and what they can do about it. */
export function Notice({ sign = 'note', children, action }: NoticeProps) {
  return (
    <div class="notice" data-sign={sign} role={sign === 'stop' ? 'alert' : 'status'}>
      <Sign name={sign} />
      <div class="grow">{children}</div>
      {action && (
        <button type="button" class="button" onClick={action.onDo}>
          {action.says}
        </button>
      )}
    </div>
  )
}

/** Rows in the shape of what is on its way. */
export function Skeleton({ rows, says }: { rows: number; says: string }) {
  return (
    <div class="skeleton" role="status" aria-label={says}>
      {Array.from({ length: rows }, (_, i) => (
        <i key={i} />
      ))}
    </div>
  )
}
