import { useState } from 'preact/hooks'
import type { CanalShown, CaseShown } from '@/api/shapes'
import { Choice, TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changeCanal, useTooth } from '@/store/cache/cases'
import { useAutoSave } from '@/store/forms/auto-save'
import { words } from '@/words/en'

/** Where a canal's lengths are measured from, chosen by a person where none goes without saying. */
export function ReferencePoint({ canal, of }: { canal: CanalShown; of: CaseShown }) {
  const [{ reference_point }, sending, choose] = useAutoSave({ reference_point: '' }, (all) =>
    changeCanal(of, canal.id, all),
  )
  const [other, setOther] = useState('')
  const tooth = useTooth(of.tooth.iso).value
  const offer = [...(tooth?.canals ?? []), ...(tooth?.look_for ?? [])].find((o) => o.name === canal.name)
  const points = offer?.other_reference_points ?? []
  return (
    <section class="card stack">
      {points.length > 0 && (
        <Choice
          label={words.chart.pointMissing(canal.name)}
          hint={words.chart.pointWhy}
          value={reference_point || undefined}
          options={points.map((value) => ({ value, says: value }))}
          onChoose={(point) => choose({ reference_point: point })}
          down
        />
      )}
      <TextField
        label={points.length > 0 ? words.chart.otherPoint : words.chart.pointMissing(canal.name)}
        hint={points.length > 0 ? undefined : words.chart.pointWhy}
        value={other}
        maxLength={40}
        wrong={sending.problem?.at('reference_point')}
        onInput={setOther}
      />
      <Sent sending={sending} fields={['reference_point']} />
      {other.trim() !== '' && (
        <button
          type="button"
          class="button"
          disabled={sending.state === 'busy'}
          onClick={() => choose({ reference_point: other.trim() })}
        >
          {words.save}
        </button>
      )}
    </section>
  )
}
