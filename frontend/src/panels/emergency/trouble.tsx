import { useRef, useState } from 'preact/hooks'
import { Sheet } from '@/parts/rationale/sheet'
import { SHOWN_MS } from '@/parts/unhurry'
import type { Chair } from '@/store/chair/chair'
import type { OfEmergency } from '@/store/outbox/emergencies'
import type { PayloadOf } from '@/walk/course-event'
import { words } from '@/words/en'
import { canHappen } from './at-hand'
import { Ways } from './ways'

type Emergency = PayloadOf<'emergency'>['what']
type Pause = NonNullable<PayloadOf<'pause'>['what']>

interface Props {
  chair: Chair
  canal: string
  pausable: boolean
  /** What the button says. */
  says?: string
}

/** Something is wrong: what stops the whole tooth first, then what lets one canal rest. */
export function Trouble({ chair, canal, pausable, says = words.chair.problem }: Props) {
  const pause = (what: string) => chair.record(canal, '', { kind: 'pause', what: what as Pause, reason: '' })
  return (
    <Problem
      says={says}
      canHappen={(about, what) => canHappen(chair, about, what)}
      onTell={(payload) => void chair.record('', '', payload)}
      onPause={pausable ? (what) => void pause(what) : undefined}
    />
  )
}

interface ProblemProps {
  says: string
  /** What cannot happen here is not offered. */
  canHappen?: (about: 'emergency' | 'pause', what: string) => boolean
  onTell: (event: OfEmergency) => void
  onPause?: ((what: string) => void) | undefined
}

/** The button, and what may have happened under it. */
export function Problem({ says, canHappen = () => true, onTell, onPause }: ProblemProps) {
  const [open, setOpen] = useState(false)
  // The second touch of a double tap that closed the sheet, where this button lies under it, opens nothing.
  const closedAt = useRef(Number.NEGATIVE_INFINITY)
  const close = () => {
    closedAt.current = performance.now()
    setOpen(false)
  }
  const stop = (what: string) => {
    close()
    onTell({ kind: 'emergency', what: what as Emergency, note: '', before: [] })
  }
  return (
    <>
      <button
        type="button"
        class="button answer"
        data-at-once
        onClick={() => performance.now() - closedAt.current >= SHOWN_MS && setOpen(true)}
      >
        {says}
      </button>
      {open && (
        <Sheet title={words.chair.what} onClose={close}>
          <section class="stack close" data-level="stop" data-at-once>
            <h3>{words.chair.emergency}</h3>
            <Ways
              says={words.chair.emergencies}
              canHappen={(what) => canHappen('emergency', what)}
              sign="stop"
              onChoose={stop}
            />
          </section>
          {onPause && (
            <section class="stack close">
              <h3>{words.card.pauseHere}</h3>
              <Ways
                says={words.card.pauses}
                canHappen={(what) => canHappen('pause', what)}
                sign="caution"
                onChoose={(what) => {
                  close()
                  onPause(what)
                }}
              />
            </section>
          )}
        </Sheet>
      )}
    </>
  )
}
