import { useEffect, useRef, useState } from 'preact/hooks'
import { Tick } from '@/parts/fields'
import { ImageBoard } from '@/parts/image-board/image-board'
import type { Marked } from '@/parts/image-board/marked-line'
import { FIRST_LOOK, Picture } from '@/parts/image-board/picture'
import { useSizeOf } from '@/parts/image-board/size-of'
import { usePlaceOfOwn } from '@/parts/place-of-own'
import { words } from '@/words/en'
import './viewer.css'

interface Props {
  address: string
  name: string
  note?: string | undefined
  /** How much taller than wide a pixel is; left out: as far as is known, it is not. */
  rowPerColumn?: number | undefined
  /** What was marked on it. */
  lines?: readonly Marked[]
  /** Said of it, below. */
  children?: preact.ComponentChildren
  onClose: () => void
}

/** An image over the whole screen: nearer, moved, brighter, with its marks. It is closed by its button, Esc or the way back. */
export function Viewer({ address, name, note, rowPerColumn = 1, lines = [], children, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const size = useSizeOf(address)
  const [look, setLook] = useState(FIRST_LOOK)
  const [marks, setMarks] = useState(true)
  const close = () => dialog.current?.close()
  useEffect(() => dialog.current?.showModal(), [])
  usePlaceOfOwn(close)
  return (
    <dialog ref={dialog} class="viewer in-the-dark" aria-label={name} onClose={onClose}>
      <header class="row apart">
        <p class="strong grow">{name}</p>
        <button type="button" class="button" onClick={close}>
          {words.images.close}
        </button>
      </header>
      {note && <p class="small viewer-note">{note}</p>}
      {size === 'broken' && <p class="viewer-note">{words.marks.noPicture}</p>}
      {size && size !== 'broken' ? (
        <ImageBoard src={address} image={size} rowPerColumn={rowPerColumn} look={look} lines={marks ? lines : []} />
      ) : (
        // Its place, so that what is asked below does not move from under a finger when the image is there.
        <div class="image-board" />
      )}
      <div class="viewer-tools">
        {lines.length > 0 && <Tick label={words.marks.showMarks} checked={marks} onChange={setMarks} />}
        <Picture look={look} onLook={setLook} />
        {children}
      </div>
    </dialog>
  )
}
