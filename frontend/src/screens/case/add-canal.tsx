import { useState } from 'preact/hooks'
import type { CaseShown } from '@/api/shapes'
import { Select, TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { addCanal, useTooth } from '@/store/cache/cases'
import { useDraft } from '@/store/cache/hooks'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

const OTHER = 'other'
const empty = () => ({ id: uuid7(), offer: '', name: '', root: '', reference_point: '' })

/** A canal that was not there at first: one of those to look for, or another by name and root. */
export function AddCanal({ to }: { to: CaseShown }) {
  const draft = useDraft(`canal of ${to.id}`, empty)
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [open, setOpen] = useState(false)
  const tooth = useTooth(to.tooth.iso).value
  const fields = draft.fields.value
  const charted = to.canals.map((c) => c.name)
  const offers = [...(tooth?.canals ?? []), ...(tooth?.look_for ?? [])].filter(
    (offer) => offer.kind !== 'form' && !charted.includes(offer.name),
  )
  const offer = offers.find((o) => o.name === fields.offer)
  const body = offer
    ? { name: offer.name, root: offer.root, reference_point: offer.reference_point ?? fields.reference_point }
    : { name: fields.name.trim(), root: fields.root.trim(), reference_point: fields.reference_point.trim() }
  const send = () =>
    run(async () => {
      await addCanal(to, { id: fields.id, ...body })
      await draft.clear(empty())
      setOpen(false)
    })
  const complete = Object.values(body).every((text) => text !== '')
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.chart.addCanal}</summary>
      <div class="stack">
        <Select
          label={words.chart.which}
          value={fields.offer}
          options={[
            { value: '', says: words.chart.choose },
            ...offers.map((o) => ({ value: o.name, says: o.name })),
            { value: OTHER, says: words.chart.otherCanal },
          ]}
          onChoose={(name) => draft.set({ offer: name })}
        />
        {fields.offer === OTHER && (
          <>
            <TextField
              label={words.chart.name}
              value={fields.name}
              maxLength={12}
              wrong={sending.problem?.at('name')}
              onInput={(name) => draft.set({ name })}
            />
            <TextField
              label={words.chart.inRoot}
              value={fields.root}
              maxLength={12}
              wrong={sending.problem?.at('root')}
              onInput={(root) => draft.set({ root })}
            />
          </>
        )}
        {fields.offer !== '' && !offer?.reference_point && (
          <TextField
            label={words.chart.referencePoint}
            value={fields.reference_point}
            maxLength={40}
            wrong={sending.problem?.at('reference_point')}
            onInput={(reference_point) => draft.set({ reference_point })}
          />
        )}
        <Sent sending={sending} fields={['name', 'root', 'reference_point']} again={() => void send()} />
        <button
          type="button"
          class="button"
          disabled={!complete || sending.state === 'busy'}
          onClick={() => void send()}
        >
          {words.chart.addCanal}
        </button>
      </div>
    </details>
  )
}
