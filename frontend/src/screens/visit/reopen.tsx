import type { CanalPlan } from '@/api/shapes'
import { InTheRoom } from '@/panels/in-the-room'
import { Choice, TextField, Tick } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { go } from '@/router'
import { useDraft } from '@/store/cache/hooks'
import type { Chair } from '@/store/chair/chair'
import { smallOf, useSupervisors, workedIn } from '@/store/chair/visits'
import type { Draft } from '@/store/session/drafts'
import { mm } from '@/units/millimetres'
import { own } from '@/walk/own'
import { words } from '@/words/en'
import { type Answers, asksFurther, byPoint, empty, followsFrom, foundOf, reopening, toFind, type YesNo } from './found'
import { VisitPage } from './visit-page'

/** The next visit begins: who is in the room, protection, and each canal found again before any engine. */
export function ReopenVisit({ id }: { id: string }) {
  return (
    <VisitPage id={id} title={words.visit.openTitle}>
      {(chair) => <Opening id={id} chair={chair} />}
    </VisitPage>
  )
}

function Opening({ id, chair }: { id: string; chair: Chair }) {
  const draft = useDraft<Answers>(`reopening of ${id}`, empty)
  const supervisors = useSupervisors()
  const answers = draft.fields.value
  const { clinic } = chair.course.visit
  const canals = toFind(chair)
  const checks = foundOf(chair, answers)
  const ready = checks && answers.protected && (!clinic || answers.supervisor_id !== '')
  const open = async () => {
    if (!ready) return
    await chair.record('', '', reopening(answers, checks))
    await draft.clear(empty())
    go(`/cases/${id}/chair`, { replace: true })
  }
  return (
    <div class="visit stack">
      <p class="soft">{words.visit.noEngine}</p>
      {clinic && (
        <InTheRoom
          supervisors={supervisors}
          now={answers.supervisor_id}
          onName={(supervisor_id) => draft.set({ supervisor_id })}
        />
      )}
      <Tick
        label={clinic ? words.visit.damOn : words.visit.protection}
        checked={answers.protected}
        onChange={(on) => draft.set({ protected: on })}
      />
      {[...byPoint(canals)].map(([point, names]) => (
        <Point key={point} point={point} names={names} draft={draft} />
      ))}
      {canals
        .filter((canal) => asksFurther(canal, answers))
        .map((canal) => (
          <CanalChecks key={canal.canal} chair={chair} canal={canal} draft={draft} />
        ))}
      {checks ? <Follows {...followsFrom(checks)} /> : <p class="soft">{words.visit.answerAll}</p>}
      <button type="button" class="button main" disabled={!ready} onClick={() => void open()}>
        {words.visit.go}
      </button>
    </div>
  )
}

/** Whether the point that lengths are measured from is as it was, else where they are measured from now. */
function Point({ point, names, draft }: { point: string; names: string[]; draft: Draft<Answers> }) {
  const { there, newPoint } = draft.fields.value
  const named = newPoint[point] ?? ''
  return (
    <section class="card stack">
      <Choice<YesNo>
        label={words.visit.pointThere(point)}
        hint={words.visit.forCanals(names.join(', '))}
        value={there[point]}
        options={[
          { value: 'yes', says: words.visit.there },
          { value: 'no', says: words.visit.gone },
        ]}
        onChoose={(value) => draft.set({ there: { ...there, [point]: value } })}
      />
      {there[point] === 'no' && (
        <TextField
          label={words.visit.newPoint}
          hint={words.visit.newPointWhy}
          value={named}
          maxLength={40}
          wrong={named.trim() === point ? words.visit.sameName : undefined}
          onInput={(value) => draft.set({ newPoint: { ...newPoint, [point]: value } })}
        />
      )}
    </section>
  )
}

/** The small instrument to where it went before, then the length; nothing to ask of a canal that was never worked. */
function CanalChecks({ chair, canal, draft }: { chair: Chair; canal: CanalPlan; draft: Draft<Answers> }) {
  const { small, length } = draft.fields.value
  const name = canal.canal
  const done = workedIn(chair, canal)
  if (!done) return <p class="soft">{words.visit.notWorked(name)}</p>
  const instrument = smallOf(chair, canal)
  const question =
    done.deepest_um === null
      ? words.visit.smallUnknown(instrument)
      : words.visit.small(instrument, mm(done.deepest_um / 1000))
  return (
    <section class="card stack" aria-label={name}>
      <h2>{name}</h2>
      <Choice<YesNo>
        label={question}
        value={own(small, name)}
        options={[
          { value: 'yes', says: words.visit.goes },
          { value: 'no', says: words.visit.staysShort },
        ]}
        onChoose={(value) => draft.set({ small: { ...small, [name]: value } })}
      />
      <Choice<YesNo>
        label={words.visit.agrees}
        value={own(length, name)}
        options={[
          { value: 'yes', says: words.visit.itAgrees },
          { value: 'no', says: words.visit.differs },
        ]}
        onChoose={(value) => draft.set({ length: { ...length, [name]: value } })}
      />
    </section>
  )
}

function Follows({ toCheck, toPlan }: { toCheck: string[]; toPlan: string[] }) {
  if (toCheck.length + toPlan.length === 0) return <Notice sign="approved">{words.visit.allLeft}</Notice>
  return (
    <>
      {toCheck.length > 0 && <Notice sign="caution">{words.visit.toCheck(toCheck.join(', '))}</Notice>}
      {toPlan.length > 0 && <Notice sign="caution">{words.visit.toPlan(toPlan.join(', '))}</Notice>}
    </>
  )
}
