import { useState } from 'preact/hooks'
import type { Role } from '@/api/shapes'
import { Choice, TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { words } from '@/words/en'
import type { Inviting } from './inviting'
import { ROLES } from './roles'

const PLACE = 'people/0'
const FIELDS = ['name', 'username', 'group'].map((field) => `${PLACE}/${field}`)

/** One person: what is left empty they choose themselves. */
export function InviteOne({ sending, send }: Inviting) {
  const [name, setName] = useState('')
  const [username, setUsername] = useState('')
  const [role, setRole] = useState<Role>('student')
  const [group, setGroup] = useState('')
  const submit = (event: Event) => {
    event.preventDefault()
    send([{ name: name.trim(), username: username.trim(), role, group: group.trim() }])
  }
  const wrong = (field: string) => sending.problem?.at(`${PLACE}/${field}`)
  return (
    <form class="stack" onSubmit={submit}>
      <Choice label={words.people.roleIs} value={role} options={ROLES} onChoose={setRole} />
      <TextField
        label={words.people.name}
        hint={words.people.chosen}
        value={name}
        onInput={setName}
        maxLength={80}
        autoComplete="off"
        wrong={wrong('name')}
      />
      <TextField
        label={words.people.username}
        hint={words.people.chosen}
        value={username}
        onInput={setUsername}
        maxLength={60}
        autoComplete="off"
        wrong={wrong('username')}
      />
      <TextField
        label={words.people.group}
        value={group}
        onInput={setGroup}
        maxLength={60}
        autoComplete="off"
        wrong={wrong('group')}
      />
      {sending.state !== 'unsent' && <Sent sending={sending} fields={FIELDS} />}
      <button type="submit" class="button main" disabled={sending.state === 'busy'}>
        {words.people.makeLink}
      </button>
    </form>
  )
}
