import { useState } from 'preact/hooks'
import type { Told } from '@/api/shapes'
import { Sheet } from '@/parts/reason/sheet'
import type { Chair } from '@/store/chair'
import { words } from '@/words/en'

type Emergency = Extract<Told, { kind: 'emergency' }>['what']
type Pause = NonNullable<Extract<Told, { kind: 'pause' }>['what']>

interface Props {
  chair: Chair
  canal: string
  pausable: boolean
  /** What the button says. */
  says?: string
}

/** Something is wrong: what stops the whole tooth first, then what lets one canal rest. */
export function Trouble({ chair, canal, pausable, says = words.chair.problem }: Props) {
  const [open, setOpen] = useState(false)
  const close = () => setOpen(false)
  const stop = (what: string) => {
    close()
    void chair.record('', '', { kind: 'emergency', what: what as Emergency, note: '' })
  }
  const pause = (what: string) => {
    close()
    void chair.record(canal, '', { kind: 'pause', what: what as Pause, reason: '' })
  }
  return (
    <>
      <button type="button" class="button answer" data-at-once onClick={() => setOpen(true)}>
        {says}
      </button>
      {open && (
        <Sheet title={words.chair.what} onClose={close}>
          <section class="stack close" data-level="stop" data-at-once>
            <h3>{words.chair.emergency}</h3>
            <Ways says={words.chair.emergencies} sign="stop" onChoose={stop} />
          </section>
          {pausable && (
            <section class="stack close">
              <h3>{words.card.pauseHere}</h3>
              <Ways says={words.card.pauses} sign="caution" onChoose={pause} />
            </section>
          )}
        </Sheet>
      )}
    </>
  )
}

interface WaysProps {
  says: Record<string, string>
  sign: 'stop' | 'caution'
  onChoose: (what: string) => void
}

function Ways({ says, sign, onChoose }: WaysProps) {
  return (
    <div class="ways">
      {Object.entries(says).map(([what, said]) => (
        <button key={what} type="button" class="button answer" data-sign={sign} onClick={() => onChoose(what)}>
          {said}
        </button>
      ))}
    </div>
  )
}
