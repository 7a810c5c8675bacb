import type { PersonRef } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { words } from '@/words/en'

interface Props {
  supervisors: readonly PersonRef[] | undefined
  /** Who is in the room as far as was said. */
  now: string
  onName: (id: string) => void
}

/** The licensed clinician in the room is named from the list on the phone. */
export function InTheRoom({ supervisors, now, onName }: Props) {
  return (
    <fieldset class="field stack in-the-room">
      <legend>{words.visit.who}</legend>
      <p class="hint">{words.visit.whoWhy}</p>
      {!supervisors && <Notice sign="caution">{words.visit.nobodyKnown}</Notice>}
      {supervisors?.map(({ id, name }) => (
        <button key={id} type="button" class="button answer" aria-pressed={id === now} onClick={() => onName(id)}>
          {name}
        </button>
      ))}
    </fieldset>
  )
}
