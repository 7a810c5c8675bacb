import { useState } from 'preact/hooks'
import type { CanalShown, CaseShown, Finding, Resorption } from '@/api/shapes'
import { Choice, Stepper, TextField } from '@/parts/fields'
import { mm, readMm } from '@/parts/millimetres'
import { Sent } from '@/parts/sent'
import { changeCanal } from '@/store/cases'
import { useSending } from '@/store/sending'
import { membership } from '@/store/session'
import { useDraft } from '@/store/use'
import { words } from '@/words/en'

interface Fields {
  finding: Finding
  resorption: Resorption
  reference_point: string
  curvature_deg: string
  curve_start_mm: string
  orifice_mm: string
  apex_mm: string
}

const NUMBERS = ['curvature_deg', 'curve_start_mm', 'orifice_mm', 'apex_mm'] as const
const FINDINGS: readonly Finding[] = ['expected', 'found', 'searched_not_found']
const RESORPTIONS: readonly Resorption[] = ['none', 'bone', 'bone_and_root']

const typed = (value: number | null) => (value === null ? '' : mm(value))

function asCharted(canal: CanalShown): Fields {
  const { finding, resorption, reference_point } = canal
  const [curvature_deg = '', curve_start_mm = '', orifice_mm = '', apex_mm = ''] = NUMBERS.map((n) => typed(canal[n]))
  return { finding, resorption, reference_point, curvature_deg, curve_start_mm, orifice_mm, apex_mm }
}

/** Orifice, resorption, curvature and depths of a canal; an empty number is one that was not measured. */
export function CanalFacts({ canal, of }: { canal: CanalShown; of: CaseShown }) {
  const draft = useDraft(`facts of ${canal.id}`, () => asCharted(canal))
  const [sending, run] = useSending()
  const [tried, setTried] = useState(false)
  const fields = draft.fields.value
  const supervisor = membership.value?.role === 'supervisor'
  const bad = NUMBERS.filter((n) => fields[n].trim() !== '' && readMm(fields[n]) === undefined)
  const wrong = (field: keyof Fields) =>
    tried && bad.some((n) => n === field) ? words.fields.noNumber : sending.problem?.at(field)
  const send = () =>
    run(async () => {
      const [curvature_deg = null, curve_start_mm = null, orifice_mm = null, apex_mm = null] = NUMBERS.map(
        (n) => readMm(fields[n]) ?? null,
      )
      const { finding, resorption, reference_point } = fields
      const body = { finding, resorption, reference_point, curvature_deg, curve_start_mm, orifice_mm, apex_mm }
      await changeCanal(of, canal.id, body)
      await draft.clear(fields)
    })
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (bad.length === 0) void send()
  }
  const number = (
    field: (typeof NUMBERS)[number],
    label: string,
    from: number,
    more: { unit?: string; step?: number } = {},
  ) => (
    <Stepper
      label={label}
      value={fields[field]}
      from={from}
      wrong={wrong(field)}
      onInput={(value) => draft.set({ [field]: value })}
      {...more}
    />
  )
  return (
    <details open={draft.restored.value}>
      <summary>{words.chart.facts}</summary>
      <form class="stack" onSubmit={submit}>
        <Choice
          label={words.chart.finding}
          value={fields.finding}
          wrong={wrong('finding')}
          options={FINDINGS.map((value) => ({
            value,
            says: words.chart.findings[value] ?? value,
            off: value === 'searched_not_found' && !supervisor,
          }))}
          hint={supervisor ? undefined : words.chart.findingHint}
          onChoose={(finding) => draft.set({ finding })}
        />
        <Choice
          label={words.chart.resorption}
          value={fields.resorption}
          wrong={wrong('resorption')}
          options={RESORPTIONS.map((value) => ({ value, says: words.chart.resorptions[value] ?? value }))}
          onChoose={(resorption) => draft.set({ resorption })}
          down
        />
        <TextField
          label={words.chart.referencePoint}
          maxLength={40}
          value={fields.reference_point}
          wrong={wrong('reference_point')}
          onInput={(reference_point) => draft.set({ reference_point })}
        />
        {number('orifice_mm', words.chart.orifice, 6)}
        {number('curvature_deg', words.chart.curvature, 10, { unit: '°', step: 1 })}
        {number('curve_start_mm', words.chart.curveStart, 14)}
        {number('apex_mm', words.chart.apex, 0.6, { step: 0.1 })}
        <Sent sending={sending} fields={Object.keys(fields)} again={() => void send()} />
        <button type="submit" class="button answer" disabled={sending.state === 'busy'}>
          {words.save}
        </button>
      </form>
    </details>
  )
}
