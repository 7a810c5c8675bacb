import { useId, useState } from 'preact/hooks'
import type { Invited, ListedLine } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { checkList } from '@/store/cache/people'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import type { Inviting } from './inviting'

/** A list from a file: first what would come of each line, then inviting those who are new. */
export function TakeIn({ sending, send }: Inviting) {
  const id = useId()
  const [lines, setLines] = useState<readonly ListedLine[]>()
  const [checking, run] = useSending()
  const take = (file: File | undefined) => {
    setLines(undefined)
    if (file) void run(async () => setLines((await checkList(await file.text())).lines))
  }
  const invited = (lines ?? []).flatMap(({ state, person }) => (state === 'new' && person ? [person as Invited] : []))
  return (
    <div class="stack">
      <p>{words.people.listSays}</p>
      <div class="field">
        <label for={id}>{words.people.file}</label>
        <input
          id={id}
          class="input"
          type="file"
          accept=".csv,text/csv,text/plain"
          onChange={(event) => {
            take(event.currentTarget.files?.[0])
            // The same file, put right, is taken in again.
            event.currentTarget.value = ''
          }}
        />
      </div>
      <Sent sending={checking} />
      {lines && (
        <>
          <Lines of={lines} />
          <button
            type="button"
            class="button main"
            disabled={sending.state === 'busy' || invited.length === 0}
            onClick={() => send(invited)}
          >
            {words.people.inviteSo(invited.length)}
          </button>
        </>
      )}
    </div>
  )
}

/** How many of each kind; what has to be put right first, then all others. */
function Lines({ of }: { of: readonly ListedLine[] }) {
  const count = { new: 0, invited: 0, member: 0, wrong: 0 }
  for (const { state } of of) count[state] += 1
  const wrongFirst = [...of].sort(
    (a, b) => Number(b.state === 'wrong') - Number(a.state === 'wrong') || a.line - b.line,
  )
  return (
    <>
      <p class="strong" role="status">
        {words.people.counted(count)}
      </p>
      {count.wrong > 0 && <Notice sign="caution">{words.people.otherFile}</Notice>}
      <ul class="ledger">
        {wrongFirst.map((each) => (
          <li key={each.line} class="one-of-people stack close">
            <p class={each.state === 'wrong' ? 'strong' : undefined}>
              {words.people.line(each.line)}: {each.person ? `${each.person.name} ` : ''}
              {words.people.lineState[each.state]}
            </p>
            {each.faults.map(({ column, says }) => (
              <p key={column + says} class="small">
                <span class="strong">{column}:</span> {says}
              </p>
            ))}
          </li>
        ))}
      </ul>
    </>
  )
}
