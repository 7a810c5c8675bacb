import type { CanalOnOffer, Tooth } from '@/api/shapes'
import { Tick } from '@/parts/fields'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { chosenCanals, type NewCaseFields, percent } from './new-case-fields'

interface Props {
  tooth: Tooth
  fields: NewCaseFields
  set: (change: Partial<NewCaseFields>) => void
}

/** What is usual for the tooth in one line; its canals to choose from, and where all that is from, folded. */
export function UsualTooth({ tooth, fields, set }: Props) {
  const range = tooth.lengths.find(
    (length) => length.root === null && length.low_mm !== null && length.high_mm !== null,
  )
  const canals = chosenCanals(fields, tooth)
  return (
    <details class="usual">
      <summary>
        <span class="grow">
          {canals.length > 0 ? words.newCase.starts(canals) : words.newCase.charted}
          {range && (
            <span class="soft block">{words.newCase.usualLength(mm(range.low_mm ?? 0), mm(range.high_mm ?? 0))}</span>
          )}
        </span>
      </summary>
      <div class="stack">
        {tooth.canals.length > 0 && (
          <fieldset class="field">
            <legend>{words.newCase.canals}</legend>
            <p class="hint">{words.newCase.canalsHint}</p>
            {tooth.canals.map((canal) => (
              <div key={canal.name}>
                <Tick
                  label={`${canal.name}${canal.reference_point ? `, ${words.reading.from(canal.reference_point)}` : ''}`}
                  checked={!fields.without.includes(canal.name)}
                  onChange={(on) => set({ without: toggled(fields.without, canal.name, !on) })}
                />
                <Studies of={canal} />
              </div>
            ))}
          </fieldset>
        )}
        {tooth.look_for.length > 0 && (
          <section class="stack">
            <h2>{words.newCase.lookFor}</h2>
            {tooth.look_for.map((canal) => (
              <LookFor
                key={canal.name}
                canal={canal}
                on={fields.with.includes(canal.name)}
                onChange={(on) => set({ with: toggled(fields.with, canal.name, on) })}
              />
            ))}
          </section>
        )}
        {tooth.lengths.length > 0 && <Lengths of={tooth} />}
      </div>
    </details>
  )
}

/** Published lengths of the tooth and its roots, each with where it is from and how it is known. */
function Lengths({ of }: { of: Tooth }) {
  return (
    <section class="stack close">
      <h2>{words.newCase.lengths}</h2>
      {of.lengths.map(({ reference_set, root, mean_mm, low_mm, high_mm, band, source, know }) => (
        <p key={`${reference_set}${root}`} class="small">
          <b>{words.newCase.lengthOf(root)}</b> {words.newCase.mean(mm(mean_mm))}
          {low_mm !== null && high_mm !== null && `; ${words.newCase.between(mm(low_mm), mm(high_mm), band)}`}.{' '}
          <span class="soft">
            {sentence(source)} {words.rationale.known(know)}
          </span>
        </p>
      ))}
    </section>
  )
}

const sentence = (text: string) => (text.endsWith('.') ? text : `${text}.`)

function toggled(list: readonly string[], name: string, on: boolean): string[] {
  return on ? [...list, name] : list.filter((other) => other !== name)
}

function LookFor({ canal, on, onChange }: { canal: CanalOnOffer; on: boolean; onChange: (on: boolean) => void }) {
  return (
    <div class="card">
      {canal.kind === 'form' ? (
        <p class="strong">{canal.name}</p>
      ) : (
        <Tick label={words.newCase.add(canal.name)} checked={on} onChange={onChange} />
      )}
      <Studies of={canal} />
    </div>
  )
}

/** How often a canal is there, study by study, each with how it is known. */
function Studies({ of }: { of: CanalOnOffer }) {
  return of.studies.map((study) => {
    const share = percent(study.low_share, study.share, study.high_share)
    return (
      <p key={study.source + study.says} class="small soft study">
        {share && <b>{words.newCase.share(share)}. </b>}
        {study.says} {sentence(study.source)} {words.rationale.known(study.know)}
      </p>
    )
  })
}
