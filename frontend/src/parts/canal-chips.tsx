import { Sign } from './signs'
import './canal-chips.css'

interface Props {
  label: string
  canals: readonly string[]
  picked: readonly string[]
  onPick: (canal: string) => void
}

/** The canals that one answer holds for; the first is always among them, any other may be taken out. */
export function CanalChips({ label, canals, picked, onPick }: Props) {
  if (canals.length < 2) return null
  return (
    <fieldset class="canal-chips">
      <legend class="small">{label}</legend>
      {canals.map((canal, i) => (
        <button
          key={canal}
          type="button"
          class="button"
          aria-pressed={picked.includes(canal)}
          disabled={i === 0}
          onClick={() => onPick(canal)}
        >
          {picked.includes(canal) && <Sign name="approved" />} {canal}
        </button>
      ))}
    </fieldset>
  )
}
