import './instrument.css'

/** An instrument as it is written: a swatch of the ISO 3630-1 colour beside its size, never in its place. */
export function InstrumentLabel({ name, colour, note }: { name: string; colour: string | null; note?: string }) {
  const [size, taper] = name.split('/')
  return (
    <span class="instrument">
      <i class="swatch" data-colour={colour ?? 'none'} aria-hidden="true" />
      <span class="number">
        {size}
        {taper && <small>/{taper}</small>}
      </span>
      {note && <small class="soft note">{note}</small>}
    </span>
  )
}
