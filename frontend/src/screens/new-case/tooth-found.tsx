import type { CanalOnOffer, Tooth } from '@/api/shapes'
import { Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { words } from '@/words/en'
import { type NewCaseFields, percent } from './new-case-fields'

interface Props {
  tooth: Tooth
  fields: NewCaseFields
  set: (change: Partial<NewCaseFields>) => void
}

/** The tooth that is meant, by its full name, and its canals on offer. */
export function ToothFound({ tooth, fields, set }: Props) {
  return (
    <>
      <div class="card tooth-found" role="status">
        <span class="tooth-number">{tooth.iso}</span>
        <div class="grow">
          <p class="small soft">{words.newCase.meant}</p>
          <p class="strong">{tooth.name}</p>
          <p class="small soft">{words.newCase.names(tooth.iso, tooth.universal, tooth.palmer)}</p>
        </div>
      </div>
      {tooth.primary && <Notice sign="caution">{words.newCase.primary}</Notice>}
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
    </>
  )
}

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
        {study.says} {study.source}. {words.why.known(study.know)}
      </p>
    )
  })
}
