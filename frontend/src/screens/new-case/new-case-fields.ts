import type { Notation, Setting, Tooth } from '@/api/shapes'

/** What is typed in the form of a new case. */
export interface NewCaseFields {
  id: string
  patient_alias: string
  notation: Notation
  designation: string
  setting: Setting | ''
  /** Canals taken away from the usual ones, and those added from what to look for. */
  without: string[]
  with: string[]
}

// Common things by the water: nobody's name, and short enough for a label.
const THINGS = ['Reed', 'Sedge', 'Rush', 'Alder', 'Pebble', 'Harbour', 'Ripple', 'Anchor', 'Kelp', 'Moss', 'Shell']
const MOST = 99

/** A made-up alias, so that nobody thinks of one with a patient's name in mind. */
function proposedAlias(): string {
  const thing = THINGS[Math.floor(Math.random() * THINGS.length)] ?? 'Reed'
  return `${thing} ${1 + Math.floor(Math.random() * MOST)}`
}

export function emptyCase(id: string): NewCaseFields {
  return {
    id,
    patient_alias: proposedAlias(),
    notation: 'iso_3950',
    designation: '',
    setting: '',
    without: [],
    with: [],
  }
}

/** Names of the canals to start with: the usual ones but those taken away, and those added. */
export function chosenCanals(fields: NewCaseFields, tooth: Tooth): string[] {
  const usual = tooth.canals.map((c) => c.name).filter((name) => !fields.without.includes(name))
  const further = tooth.look_for.map((c) => c.name).filter((name) => fields.with.includes(name))
  return [...usual, ...further]
}

/** A share for a sentence: 12 %, 12–30 %, under 1 %. */
export function percent(low: number | null, share: number | null, high: number | null): string {
  const rounded = (x: number) => (x > 0 && x < 0.01 ? 'under 1' : String(Math.round(x * 100)))
  if (share === null && low !== null && high !== null) return `${rounded(low)}–${rounded(high)}\u00a0%`
  if (share === null) return ''
  return low !== null && high !== null
    ? `${rounded(share)}\u00a0% (${rounded(low)}–${rounded(high)}\u00a0%)`
    : `${rounded(share)}\u00a0%`
}
