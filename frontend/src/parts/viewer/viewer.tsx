import { useEffect, useRef, useState } from 'preact/hooks'
import { words } from '@/words/en'
import { useZoom } from './use-zoom'
import './viewer.css'

interface Props {
  address: string
  name: string
  note?: string | undefined
  onClose: () => void
}

const AS_IT_IS = { brightness: 100, contrast: 100, invert: false }

/** An image over the whole screen: larger, moved, brighter, inverted. It is closed by its button, Esc or the way back. */
export function Viewer({ address, name, note, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const zoom = useZoom()
  const [look, setLook] = useState(AS_IT_IS)
  const close = () => dialog.current?.close()
  useEffect(() => {
    dialog.current?.showModal()
    history.pushState({ sheet: true }, '')
    addEventListener('popstate', close)
    return () => {
      removeEventListener('popstate', close)
      if (history.state?.sheet) history.back()
    }
  }, [])
  const { scale, x, y } = zoom.placing
  const filter = `brightness(${look.brightness}%) contrast(${look.contrast}%) invert(${look.invert ? 1 : 0})`
  return (
    <dialog ref={dialog} class="viewer" aria-label={name} onClose={onClose}>
      <header class="row apart">
        <p class="strong grow">{name}</p>
        <button type="button" class="button" onClick={close}>
          {words.images.close}
        </button>
      </header>
      {note && <p class="small viewer-note">{note}</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved by keys */}
      <div ref={zoom.frame} class="viewer-frame" role="application" aria-label={name} tabIndex={0} {...zoom.hands}>
        <img
          src={address}
          alt={name}
          draggable={false}
          style={{ filter, transform: `translate(${x}px, ${y}px) scale(${scale})` }}
        />
      </div>
      <footer class="viewer-tools">
        <div class="row">
          <button type="button" class="button" aria-label={words.images.zoom.out} onClick={zoom.smaller}>
            −
          </button>
          <button type="button" class="button" aria-label={words.images.zoom.in} onClick={zoom.larger}>
            +
          </button>
          <button type="button" class="button grow" onClick={zoom.whole}>
            {words.images.zoom.whole}
          </button>
          <button
            type="button"
            class="button grow"
            aria-pressed={look.invert}
            onClick={() => setLook({ ...look, invert: !look.invert })}
          >
            {words.images.look.invert}
          </button>
        </div>
        <div class="row">
          <Slider
            label={words.images.look.brightness}
            value={look.brightness}
            onInput={(brightness) => setLook({ ...look, brightness })}
          />
          <Slider
            label={words.images.look.contrast}
            value={look.contrast}
            onInput={(contrast) => setLook({ ...look, contrast })}
          />
          <button type="button" class="button" onClick={() => setLook(AS_IT_IS)}>
            {words.images.look.reset}
          </button>
        </div>
      </footer>
    </dialog>
  )
}

function Slider({ label, value, onInput }: { label: string; value: number; onInput: (value: number) => void }) {
  return (
    <label class="grow small">
      {label}
      <input
        type="range"
        min={20}
        max={300}
        value={value}
        onInput={(event) => onInput(event.currentTarget.valueAsNumber)}
      />
    </label>
  )
}
