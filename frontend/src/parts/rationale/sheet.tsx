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

/** Opens a dialog over the screen with a place of its own in the history: Esc and the way back close it. */
export function useDialog() {
  const ref = useRef<HTMLDialogElement>(null)
  const close = () => ref.current?.close()
  useLayoutEffect(() => ref.current?.showModal(), [])
  usePlaceOfOwn(close)
  return { ref, close }
}

/**
 * A sheet over the screen. It is closed by its button, Esc, a touch beside it or the way back, and the focus returns
 * to where it was.
 */
export function Sheet({ title, onClose, children }: Props) {
  // Before it is said to be asked: what it asks is in sight from here on, and not a frame later.
  const { ref, close } = useDialog()
  const id = useId()
  useAsked(title)
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
          {words.close}
        </button>
      </div>
    </dialog>
  )
}
