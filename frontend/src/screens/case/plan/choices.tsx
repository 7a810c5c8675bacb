import type { Asked, Irrigant, Kit, Needle, Technique } from '@/api/shapes'
import { seriesTapers, withKit } from '@/panels/plan/asked'
import { Select } from '@/parts/fields'
import { words } from '@/words/en'

interface Props {
  asked: Asked
  kits: readonly Kit[]
  techniques: readonly Technique[]
  onChange: (next: Asked) => void
  open?: boolean
}

/** Last hand sizes of a glide path that are offered; the planner refuses what a technique cannot do. */
const GLIDE_PATHS = [15, 20]
const RINSES: Irrigant[][] = [[], ['saline'], ['edta'], ['edta', 'sodium_hypochlorite'], ['edta', 'saline']]

const keyOf = (needle: Needle) => `${needle.gauge} ${needle.tip}`

/** Kit, technique, needle, irrigant, and the taper of the series where the kit has several. */
export function Choices({ asked, kits, techniques, onChange, open = false }: Props) {
  const kit = kits.find((k) => k.id === asked.kit_id)
  const technique = techniques.find((t) => t.key === asked.technique)
  const tapers = seriesTapers(kit)
  const choose = (change: Partial<Asked['choices']>) => onChange({ ...asked, choices: { ...asked.choices, ...change } })
  return (
    <details open={open} class="card">
      <summary>{words.planning.choices}</summary>
      <div class="stack">
        <Select
          label={words.planning.kit}
          value={asked.kit_id}
          options={kits.map((k) => ({ value: k.id, says: k.name }))}
          onChoose={(id) => {
            const next = kits.find((k) => k.id === id)
            if (next) onChange(withKit(asked, next))
          }}
        />
        <Select
          label={words.planning.technique}
          hint={technique?.says}
          value={asked.technique}
          options={techniques.map((t) => ({ value: t.key, says: t.name }))}
          onChoose={(key) => onChange({ ...asked, technique: key })}
        />
        {tapers.length > 1 && (
          <Select
            label={words.planning.seriesTaper}
            value={String(asked.choices.series_taper ?? '')}
            options={[
              { value: '', says: words.planning.proposedTaper },
              ...tapers.map((t) => ({ value: String(t), says: `.${String(t).padStart(2, '0')}` })),
            ]}
            onChoose={(t) => choose({ series_taper: t === '' ? null : Number(t) })}
          />
        )}
        <Select
          label={words.planning.needle}
          value={keyOf(asked.choices.needle)}
          options={(kit?.needles ?? [asked.choices.needle]).map((n) => ({
            value: keyOf(n),
            says: words.planning.needleSays(n.gauge, n.tip),
          }))}
          onChoose={(key) => {
            const needle = kit?.needles.find((n) => keyOf(n) === key)
            if (needle) choose({ needle })
          }}
        />
        <Select
          label={words.planning.glidePath}
          value={String(asked.choices.glide_path_to_size ?? '')}
          options={[
            { value: '', says: words.planning.proposedTaper },
            ...GLIDE_PATHS.map((size) => ({ value: String(size), says: words.planning.upTo(size) })),
          ]}
          onChoose={(size) => choose({ glide_path_to_size: size === '' ? null : Number(size) })}
        />
        <Select
          label={words.planning.irrigant}
          value={asked.choices.irrigant ?? 'water'}
          options={Object.entries(words.irrigants).map(([value, says]) => ({ value, says }))}
          onChoose={(irrigant) => choose({ irrigant: irrigant as Irrigant })}
        />
        <Select
          label={words.planning.finalRinse}
          value={(asked.choices.final_rinse ?? []).join(' ')}
          options={RINSES.map((rinse) => ({ value: rinse.join(' '), says: words.planning.rinse(rinse) }))}
          onChoose={(rinse) => choose({ final_rinse: RINSES.find((r) => r.join(' ') === rinse) ?? [] })}
        />
      </div>
    </details>
  )
}
