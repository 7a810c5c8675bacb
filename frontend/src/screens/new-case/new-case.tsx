import { useEffect, useRef, useState } from 'preact/hooks'
import type { Notation, Setting, Tooth } from '@/api/shapes'
import { Choice, TextField } from '@/parts/fields'
import { NoName, saidOf } from '@/parts/no-name'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Sent } from '@/parts/sent'
import { go } from '@/router'
import { findTooth, openCase, type ToothSearch } from '@/store/cache/cases'
import { useDraft } from '@/store/cache/hooks'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import { chosenCanals, emptyCase, type NewCaseFields } from './new-case-fields'
import { ToothFound } from './tooth-found'
import './new-case.css'

const NOTATIONS: readonly Notation[] = ['iso_3950', 'universal', 'palmer']
const SETTINGS: readonly Setting[] = ['block', 'extracted', 'clinic']
const FIELDS = ['patient_alias', 'tooth', 'setting', 'canals'] as const

/** Alias, tooth in any notation, setting, and the canals to start with. */
export function NewCase() {
  const draft = useDraft('new case', () => emptyCase(uuid7()))
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [tried, setTried] = useState(false)
  const fields = draft.fields.value
  const search = useToothSearch(fields)
  const wrong = (field: (typeof FIELDS)[number]) => {
    const lacks = tried ? lacking(fields, search.tooth) : {}
    return lacks[field] ?? sending.problem?.at(field)
  }
  const noName = useRef<string | undefined>(undefined)
  const send = () =>
    run(async () => {
      const { tooth } = search
      if (!tooth || fields.setting === '') return
      const name = { notation: fields.notation, designation: fields.designation.trim() }
      const alias = saidOf(fields.patient_alias, noName.current)
      const same = { id: fields.id, ...alias, setting: fields.setting }
      const id = await openCase({ ...same, tooth: name, canals: chosenCanals(fields, tooth) })
      await draft.clear(emptyCase(uuid7()))
      go(`/cases/${id}`, { replace: true })
    })
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (Object.keys(lacking(fields, search.tooth)).length === 0) void send()
  }
  return (
    <Page title={words.newCase.title} back={{ to: '/cases', says: words.back }}>
      <form class="stack new-case" onSubmit={submit}>
        {draft.restored.value && <Restored onClear={() => void draft.clear(emptyCase(uuid7()))} />}
        <TextField
          label={words.newCase.alias}
          hint={words.newCase.aliasHint}
          autoComplete="off"
          maxLength={40}
          value={fields.patient_alias}
          wrong={wrong('patient_alias')}
          onInput={(patient_alias) => draft.set({ patient_alias })}
        />
        <NoName
          of={sending}
          onSaid={() => {
            noName.current = fields.patient_alias
            void send()
          }}
        />
        <ToothFields fields={fields} set={draft.set} wrong={search.wrong ?? wrong('tooth')} />
        {search.tooth && <ToothFound tooth={search.tooth} fields={fields} set={draft.set} />}
        {wrong('canals') && <Notice sign="stop">{wrong('canals')}</Notice>}
        <Choice
          label={words.newCase.setting}
          value={fields.setting || undefined}
          wrong={wrong('setting')}
          options={SETTINGS.map((value) => ({ value, says: words.setting[value] }))}
          onChoose={(setting) => draft.set({ setting })}
        />
        <Sent sending={sending} fields={FIELDS} again={() => void send()} />
        <button
          type="submit"
          class="button main"
          aria-busy={sending.state === 'busy'}
          disabled={sending.state === 'busy'}
        >
          {sending.state === 'busy' ? words.newCase.busy : words.newCase.go}
        </button>
      </form>
    </Page>
  )
}

type FieldsProps = { fields: NewCaseFields; set: (change: Partial<NewCaseFields>) => void; wrong: string | undefined }

function ToothFields({ fields, set, wrong }: FieldsProps) {
  const anew = { without: [], with: [] }
  return (
    <>
      <Choice
        label={words.newCase.notation}
        value={fields.notation}
        options={NOTATIONS.map((value) => ({ value, says: words.newCase.notations[value] }))}
        onChoose={(notation) => set({ notation, ...anew })}
      />
      <TextField
        label={words.newCase.designation}
        hint={words.newCase.designationHint[fields.notation]}
        autoComplete="off"
        maxLength={8}
        value={fields.designation}
        wrong={wrong}
        onInput={(designation) => set({ designation, ...anew })}
      />
    </>
  )
}

function Restored({ onClear }: { onClear: () => void }) {
  return <Notice action={{ says: words.throwAway, onDo: onClear }}>{words.restored}</Notice>
}

function lacking(fields: NewCaseFields, tooth: Tooth | undefined): Partial<Record<(typeof FIELDS)[number], string>> {
  return {
    ...(fields.patient_alias.trim() ? {} : { patient_alias: words.required }),
    ...(tooth ? {} : { tooth: words.required }),
    ...(fields.setting ? {} : { setting: words.required }),
    ...(tooth && tooth.canals.length > 0 && chosenCanals(fields, tooth).length === 0
      ? { canals: words.newCase.noCanals }
      : {}),
  }
}

/** The tooth that the designation means, looked up while it is typed. */
function useToothSearch({ notation, designation }: NewCaseFields): ToothSearch {
  const [search, setSearch] = useState<ToothSearch>({})
  useEffect(() => {
    setSearch({})
    const typed = designation.trim()
    if (!typed) return
    let current = true
    const timer = setTimeout(async () => {
      const answer = await findTooth({ notation, designation: typed })
      if (current) setSearch(answer)
    }, 250)
    return () => {
      current = false
      clearTimeout(timer)
    }
  }, [notation, designation])
  return search
}
