import { Choice, TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { go } from '@/router'
import { useDraft } from '@/store/cache/hooks'
import type { Chair } from '@/store/chair/chair'
import { workedIn } from '@/store/chair/visits'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { VisitPage } from './visit-page'

interface Fields {
  dressing?: keyof typeof words.visit.dressings
  temporary?: keyof typeof words.visit.temporaries
  sealed?: 'yes' | 'no'
  note: string
}

const empty = (): Fields => ({ note: '' })

/** Close for today, from whatever step: what was done so far, what is left in the tooth. */
export function CloseVisit({ id }: { id: string }) {
  return (
    <VisitPage id={id} title={words.visit.close}>
      {(chair) => <Closing id={id} chair={chair} />}
    </VisitPage>
  )
}

function Closing({ id, chair }: { id: string; chair: Chair }) {
  const draft = useDraft<Fields>(`closing of ${id}`, empty)
  const { dressing, temporary, sealed, note } = draft.fields.value
  const { visit, haltedBy } = chair.course
  const said = dressing && temporary && sealed
  const close = async () => {
    if (!said) return
    await chair.record('', '', { kind: 'close', dressing, temporary, access_sealed: sealed === 'yes', note })
    await draft.clear(empty())
    go(`/cases/${id}/chair`, { replace: true })
  }
  return (
    <div class="visit stack">
      {haltedBy && <Notice sign="stop">{words.visit.emergencyStays}</Notice>}
      <SoFar chair={chair} />
      <Choice
        label={words.visit.dressing}
        value={dressing}
        options={optionsOf(words.visit.dressings)}
        onChoose={(value) => draft.set({ dressing: value })}
        down
      />
      <Choice
        label={words.visit.temporary}
        value={temporary}
        options={optionsOf(words.visit.temporaries)}
        onChoose={(value) => draft.set({ temporary: value })}
        down
      />
      <Choice
        label={words.visit.sealed}
        value={sealed}
        options={[
          { value: 'yes', says: words.visit.isSealed },
          { value: 'no', says: words.visit.isOpen },
        ]}
        onChoose={(value) => draft.set({ sealed: value })}
      />
      {sealed === 'no' && <Notice sign="caution">{words.visit.openWarns}</Notice>}
      <TextField label={words.visit.note} value={note} rows={2} onInput={(value) => draft.set({ note: value })} />
      <p class="small soft">
        {visit.clinic && words.visit.checkAsked} {words.visit.closeWarns}
      </p>
      <button type="button" class="button main" disabled={!said} onClick={() => void close()}>
        {words.visit.close}
      </button>
    </div>
  )
}

function optionsOf<T extends string>(says: Readonly<Record<T, string>>): { value: T; says: string }[] {
  return (Object.keys(says) as T[]).map((value) => ({ value, says: says[value] }))
}

/** Every canal as it stands, from what was recorded. */
function SoFar({ chair }: { chair: Chair }) {
  return (
    <section>
      <h2>{words.visit.soFar}</h2>
      <ul class="so-far">
        {chair.plan.canals.map((canal) => {
          const course = chair.course.canals[canal.canal]
          const done = workedIn(chair, canal)
          const { node } = course?.walk ?? {}
          return (
            <li key={canal.canal}>
              <b>{canal.canal}</b>
              <span>
                {node?.kind === 'do' && `${words.phase(node.phase)} · `}
                {words.chair.state[course?.state ?? 'open']}
                <span class="small soft block">
                  {done === undefined
                    ? words.visit.nothingYet
                    : done.depth_um === null
                      ? words.visit.lastShort(done.instrument)
                      : words.visit.lastStep(done.instrument, mm(done.depth_um / 1000))}
                </span>
              </span>
            </li>
          )
        })}
      </ul>
    </section>
  )
}
