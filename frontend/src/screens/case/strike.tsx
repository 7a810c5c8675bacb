import { useState } from 'preact/hooks'
import { Sent } from '@/parts/sent'
import { strike } from '@/store/cache/cases'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

type Why = keyof typeof words.struck.why

interface Props {
  caseId: string
  kind: 'readings' | 'junctions'
  id: string
}

/** Strikes a reading that was a mistake: one touch asks why, the answer is the second. */
export function Strike({ caseId, kind, id }: Props) {
  const [open, setOpen] = useState(false)
  const [sending, run] = useSending()
  const busy = sending.state === 'busy'
  const answer = (why: Why) => void run(() => strike(caseId, kind, id, why))
  if (!open)
    return (
      <button type="button" class="button plain" onClick={() => setOpen(true)}>
        {words.struck.strike}
      </button>
    )
  return (
    <div class="stack close">
      <p class="small">{words.struck.ask}</p>
      {(Object.keys(words.struck.why) as Why[]).map((why) => (
        <button key={why} type="button" class="button answer" disabled={busy} onClick={() => answer(why)}>
          {words.struck.why[why]}
        </button>
      ))}
      <button type="button" class="button plain" disabled={busy} onClick={() => setOpen(false)}>
        {words.struck.keep}
      </button>
      <Sent sending={sending} fields={[]} />
    </div>
  )
}
