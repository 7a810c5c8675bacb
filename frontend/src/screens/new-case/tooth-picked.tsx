import { useState } from 'preact/hooks'
import type { Notation } from '@/api/shapes'
import { Arch } from '@/parts/arch/arch'
import { Choice, TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import type { ToothSearch } from '@/store/cache/cases'
import { words } from '@/words/en'
import type { NewCaseFields } from './new-case-fields'

const NOTATIONS: readonly Notation[] = ['iso_3950', 'universal', 'palmer']
const ANEW = { without: [], with: [] }

interface Props {
  fields: NewCaseFields
  set: (change: Partial<NewCaseFields>) => void
  search: ToothSearch
  wrong: string | undefined
  /** What is usual for the tooth, once it is known. */
  children: preact.ComponentChildren
}

/** The tooth, touched on the arch or typed in any notation: either shows what the other says. */
export function ToothPicked({ fields, set, search: { tooth, wrong: unknown }, wrong, children }: Props) {
  const [typing, setTyping] = useState(false)
  const picked = fields.notation === 'iso_3950' ? fields.designation.trim() : tooth?.iso
  // What cannot be seen on the arch is seen where it was typed.
  const open = typing || tooth?.primary || (fields.notation !== 'iso_3950' && fields.designation !== '')
  return (
    <>
      <Arch value={picked} onPick={(iso) => set({ notation: 'iso_3950', designation: iso, ...ANEW })}>
        <span class="tooth-number">{picked}</span>
        <span class="small">{tooth?.name}</span>
      </Arch>
      <p class="picked-says" role="status">
        {tooth && `${tooth.iso}, ${tooth.name}`}
      </p>
      {tooth?.primary && <Notice sign="caution">{words.newCase.primary}</Notice>}
      {children}
      {wrong && !open && <Notice sign="stop">{wrong}</Notice>}
      <details open={open} onToggle={(event) => setTyping(event.currentTarget.open)}>
        <summary>{words.newCase.typeIt}</summary>
        <div class="stack">
          <Choice
            label={words.newCase.notation}
            value={fields.notation}
            options={NOTATIONS.map((value) => ({ value, says: words.newCase.notations[value] }))}
            onChoose={(notation) => set({ notation, ...ANEW })}
          />
          <TextField
            label={words.newCase.designation}
            hint={words.newCase.designationHint[fields.notation]}
            autoComplete="off"
            maxLength={8}
            value={fields.designation}
            wrong={unknown ?? (open ? wrong : undefined)}
            onInput={(designation) => set({ designation, ...ANEW })}
          />
          {tooth && <p class="small soft">{words.newCase.names(tooth.iso, tooth.universal, tooth.palmer)}</p>}
        </div>
      </details>
    </>
  )
}
