import { useState } from 'preact/hooks'
import type { PersonInProgramme, Role } from '@/api/shapes'
import { Revoke } from '@/panels/revoke'
import { Choice, TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { changePerson, endPerson } from '@/store/cache/people'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import { ROLES } from './roles'

const FIELDS = ['group', 'treats_patients_until']

/** What somebody is in the programme; changed and ended where the coordinator asks for it. */
export function OnePerson({ of }: { of: PersonInProgramme }) {
  const [changing, setChanging] = useState(false)
  const until = of.treats_patients_until
  const about = [words.people.role[of.role], ...(of.group ? [of.group] : [])]
  if (of.role === 'student')
    about.push(words.people.treats(until && words.date(until), until !== null && until < today()))
  return (
    <div class="stack close one-of-people">
      <h3>{of.person.name}</h3>
      <p class="small">{about.join(', ')}</p>
      {changing ? (
        <Change of={of} onDone={() => setChanging(false)} />
      ) : (
        <button type="button" class="button plain" onClick={() => setChanging(true)}>
          {words.people.change(of.person.name)}
        </button>
      )}
    </div>
  )
}

const today = () => new Date().toISOString().slice(0, 10)

function Change({ of, onDone }: { of: PersonInProgramme; onDone: () => void }) {
  const [role, setRole] = useState<Role>(of.role)
  const [group, setGroup] = useState(of.group)
  const [until, setUntil] = useState(of.treats_patients_until ?? '')
  const [sending, run] = useSending()
  const leave = role === 'student' ? { treats_patients_until: until || null } : {}
  const save = (event: Event) => {
    event.preventDefault()
    void run(() => changePerson(of.person.id, { role, group, ...leave }).then(onDone))
  }
  return (
    <form class="stack" onSubmit={save}>
      <Choice label={words.people.roleIs} value={role} options={ROLES} onChoose={setRole} />
      <TextField
        label={words.people.group}
        value={group}
        onInput={setGroup}
        maxLength={60}
        autoComplete="off"
        wrong={sending.problem?.at('group')}
      />
      {role === 'student' && (
        <TextField
          label={words.people.treatsUntil}
          hint={words.people.treatsHint}
          type="date"
          value={until}
          onInput={setUntil}
          wrong={sending.problem?.at('treats_patients_until')}
        />
      )}
      <Sent sending={sending} fields={FIELDS} />
      <button type="submit" class="button main" disabled={sending.state === 'busy'}>
        {words.people.save}
      </button>
      <button type="button" class="button plain" onClick={onDone}>
        {words.people.stop}
      </button>
      <p class="small soft">{words.people.endSays}</p>
      <Revoke name={of.person.name} revoke={() => endPerson(of.person.id)} says={words.people.end} />
    </form>
  )
}
