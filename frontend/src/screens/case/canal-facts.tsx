import { useRef, useState } from 'preact/hooks'
import type { CanalShown, CaseShown, Finding, Resorption } from '@/api/shapes'
import { BOUNDS, FACTS, type FactName } from '@/parts/bounds'
import { Choice, Stepper, TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changeCanal } from '@/store/cache/cases'
import { useDraft } from '@/store/cache/hooks'
import { useSending } from '@/store/forms/sending'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { chartedNumbers, FURTHER, type Typed, toNumbers, USUAL, wrongNumber } from './canal-numbers'

interface Fields extends Typed {
  finding: Finding
  resorption: Resorption
  reference_point: string
}

const FINDINGS: readonly Finding[] = ['expected', 'found', 'searched_not_found']
const RESORPTIONS: readonly Resorption[] = ['none', 'bone', 'bone_and_root']

function asCharted(canal: CanalShown): Fields {
  const { finding, resorption, reference_point } = canal
  return { finding, resorption, reference_point, ...chartedNumbers(canal) }
}

/** What is charted of a canal; an empty number is one that was not measured. */
export function CanalFacts({ canal, of }: { canal: CanalShown; of: CaseShown }) {
  const draft = useDraft(`facts of ${canal.id}`, () => asCharted(canal))
  const [sending, run] = useSending()
  const [tried, setTried] = useState(false)
  const fields = draft.fields.value
  // Once it is open it is not shut under somebody who deletes a number to type another.
  const further = useRef(false)
  further.current ||= FURTHER.some((name) => fields[name] !== '')
  const supervisor = membership.value?.role === 'supervisor'
  const wrong = (field: keyof Fields) => sending.problem?.at(field)
  const send = () =>
    run(async () => {
      const { finding, resorption, reference_point } = fields
      await changeCanal(of, canal.id, { finding, resorption, reference_point, ...toNumbers(fields) })
      await draft.clear(fields)
    })
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if ([...USUAL, ...FURTHER].every((name) => wrongNumber(name, fields) === undefined)) void send()
  }
  const number = (name: FactName) => (
    <Stepper
      key={name}
      label={words.capital(FACTS[name].label)}
      {...BOUNDS[FACTS[name].quantity]}
      value={fields[name]}
      wrong={(tried ? wrongNumber(name, fields) : undefined) ?? wrong(name)}
      onInput={(value) => draft.set({ [name]: value })}
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
        {USUAL.map(number)}
        <details open={further.current}>
          <summary>{words.chart.further}</summary>
          <div class="stack">{FURTHER.map(number)}</div>
        </details>
        <Sent sending={sending} fields={Object.keys(fields)} again={() => void send()} />
        <button type="submit" class="button answer" disabled={sending.state === 'busy'}>
          {words.save}
        </button>
      </form>
    </details>
  )
}
