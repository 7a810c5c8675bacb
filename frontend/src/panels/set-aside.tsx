import { useState } from 'preact/hooks'
import { Sheet } from '@/parts/rationale/sheet'
import type { Unsent } from '@/store/device/schema'
import { setAside } from '@/store/outbox/left-over'
import { words } from '@/words/en'

/** Sets a refused entry aside, in two touches: it does not count any more, and a note says so. */
export function SetAside({ of }: { of: Unsent }) {
  const [open, setOpen] = useState(false)
  const go = () => {
    setOpen(false)
    void setAside(of, ({ event, refused }) =>
      words.leftOver.note(
        words.chair.kind[event.payload.kind] || words.leftOver.aStep,
        event.device_time,
        refused ?? '',
      ),
    )
  }
  return (
    <>
      <button type="button" class="button" onClick={() => setOpen(true)}>
        {words.leftOver.setAside}
      </button>
      {open && (
        <Sheet title={words.leftOver.setAsideTitle} onClose={() => setOpen(false)}>
          <p>{words.leftOver.setAsideSays}</p>
          <button type="button" class="button main" onClick={go}>
            {words.leftOver.setAsideNow}
          </button>
        </Sheet>
      )}
    </>
  )
}
