import { useState } from 'preact/hooks'
import { words } from '@/words/en'
import './images.css'

interface TileProps {
  name: string
  small: string | undefined
  opened: (onClose: () => void) => preact.ComponentChildren
  children?: preact.ComponentChildren
}

/** A picture, small, with its name; a touch opens it. */
export function Tile({ name, small, opened, children }: TileProps) {
  const [open, setOpen] = useState(false)
  const [broken, setBroken] = useState(false)
  return (
    <>
      <button type="button" class="image-tile" aria-label={words.images.open(name)} onClick={() => setOpen(true)}>
        {small && !broken ? (
          <img data-drawn="small image" src={small} alt="" onError={() => setBroken(true)} />
        ) : (
          <span class="image-plate small">{broken && words.images.noPicture}</span>
        )}
        {children}
        <span class="image-name small">{name}</span>
      </button>
      {open && opened(() => setOpen(false))}
    </>
  )
}
