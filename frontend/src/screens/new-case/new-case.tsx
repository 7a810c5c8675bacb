import { useEffect, useRef, useState } from 'preact/hooks'
import type { Setting, Tooth } from '@/api/shapes'
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
import { ToothPicked } from './tooth-picked'
import { UsualTooth } from './usual-tooth'
import './new-case.css'

const SETTINGS: readonly Setting[] = ['block', 'extracted', 'clinic']
const FORM = 'new-case'
const FIELDS = ['patient_alias', 'tooth', 'setting', 'canals'] as const

/** Setting, the tooth picked on the arch or typed in any notation, an alias, and the canals to start with. */
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
  const then = useRef('')
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
      go(`/cases/${id}${then.current}`, { replace: true })
    })
  const busy = sending.state === 'busy'
  const submit = (measures: boolean) => {
    then.current = measures ? '?measure' : ''
    setTried(true)
    if (Object.keys(lacking(fields, search.tooth)).length === 0) void send()
  }
  return (
    <Page
      title={words.newCase.title}
      back={{ to: '/cases', says: words.back }}
      foot={
        <>
          <Sent sending={sending} fields={FIELDS} again={() => void send()} />
          <div class="new-case-dock">
            <button type="button" class="button answer" disabled={busy} onClick={() => submit(false)}>
              {words.newCase.go}
            </button>
            <button type="submit" form={FORM} class="button main" aria-busy={busy} disabled={busy}>
              {busy ? words.newCase.busy : words.newCase.measure}
            </button>
          </div>
        </>
      }
    >
      <form
        id={FORM}
        class="stack new-case"
        onSubmit={(event) => {
          event.preventDefault()
          submit(true)
        }}
      >
        {draft.restored.value && <Restored onClear={() => void draft.clear(emptyCase(uuid7()))} />}
        <Choice
          label={words.newCase.setting}
          value={fields.setting || undefined}
          wrong={wrong('setting')}
          options={SETTINGS.map((value) => ({ value, says: words.setting[value] }))}
          onChoose={(setting) => draft.set({ setting })}
        />
        <ToothPicked fields={fields} set={draft.set} search={search} wrong={wrong('tooth')}>
          {search.tooth && <UsualTooth tooth={search.tooth} fields={fields} set={draft.set} />}
          {wrong('canals') && <Notice sign="stop">{wrong('canals')}</Notice>}
        </ToothPicked>
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
      </form>
    </Page>
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
