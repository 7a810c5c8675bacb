import { Tick } from '@/parts/fields'
import { words } from '@/words/en'
import type { Look } from './image-board'

export const FIRST_LOOK: Look = { brightness: 1, contrast: 1, invert: false }

/** How the image is shown; what is kept of it stays as it is. */
export function Picture({ look, onLook }: { look: Look; onLook: (look: Look) => void }) {
  return (
    <details>
      <summary>{words.marks.picture}</summary>
      <div class="stack">
        <Slide
          label={words.marks.brightness}
          value={look.brightness}
          onValue={(brightness) => onLook({ ...look, brightness })}
        />
        <Slide
          label={words.marks.contrast}
          value={look.contrast}
          onValue={(contrast) => onLook({ ...look, contrast })}
        />
        <Tick label={words.marks.invert} checked={look.invert} onChange={(invert) => onLook({ ...look, invert })} />
        <button type="button" class="button plain" onClick={() => onLook(FIRST_LOOK)}>
          {words.marks.asTaken}
        </button>
      </div>
    </details>
  )
}

function Slide({ label, value, onValue }: { label: string; value: number; onValue: (value: number) => void }) {
  return (
    <label class="image-slide">
      <span>{label}</span>
      <input
        type="range"
        min="0.3"
        max="3"
        step="0.05"
        value={value}
        onInput={(event) => onValue(Number(event.currentTarget.value))}
      />
    </label>
  )
}
