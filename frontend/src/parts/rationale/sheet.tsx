import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import { usePlaceOfOwn } from '@/parts/place-of-own'
import { useAsked } from '@/parts/unhurried'
import { words } from '@/words/en'
import './sheet.css'

interface Props {
  title: string
  onClose: () => void
  children: preact.ComponentChildren
}

/**
 * A sheet over the screen. It is closed by its button, Esc, a touch beside it or the way back, and the focus returns
 * to where it was.
 */
export function Sheet({ title, onClose, children }: Props) {
  const ref = useRef<HTMLDialogElement>(null)
  const id = useId()
  const close = () => ref.current?.close()
  // Before it is said to be asked: what it asks is in sight from here on, and not a frame later.
  useLayoutEffect(() => ref.current?.showModal(), [])
  useAsked(title)
  usePlaceOfOwn(close)
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Esc closes a dialog by itself
    <dialog
      ref={ref}
      class="sheet"
      aria-labelledby={id}
      onClose={onClose}
      onClick={(event) => event.target === event.currentTarget && close()}
    >
      <div class="sheet-in stack">
        <h2 id={id}>{title}</h2>
        {children}
        <button type="button" class="button answer" onClick={close}>
          {words.rationale.close}
        </button>
      </div>
    </dialog>
  )
}
