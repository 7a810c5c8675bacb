import { useState } from 'preact/hooks'
import type { NewReview, VersionShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { decide } from '@/store/cache/review'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import type { Draft } from '@/store/session/drafts'
import { words } from '@/words/en'
import { ACKNOWLEDGE, unacknowledged } from './acknowledge'
import { partners } from './release'
import { type ReviewFields, saysSomething, toReview, unsaid, wrongLength } from './review-fields'
import { undecided } from './verdicts'

/** Return or approve exactly the plan on the screen. */
export function Answer({ of, draft }: { of: VersionShown; draft: Draft<ReviewFields> }) {
  const [sending, run] = useSending(() => draft.set({ id: uuid7() }))
  const [last, setLast] = useState<NewReview['decision']>()
  const [mute, setMute] = useState<string>()
  const { returned } = draft.fields.value
  const unseen = unacknowledged(of.plan, draft.fields.value)
  const open = undecided(of.plan, draft.fields.value)
  const lit = unseen.length + open.length === 0
  const send = (decision: NewReview['decision']) => {
    setLast(decision)
    const fields = draft.fields.value
    const lacks = whatLacks(of, fields, decision)
    setMute(lacks)
    if (lacks && open.length === 0 && unseen.length > 0) document.getElementById(ACKNOWLEDGE)?.scrollIntoView?.()
    if (lacks) return
    void run(async () => {
      await decide(of, toReview(fields, decision))
      await draft.clear(fields)
    })
  }
  const busy = sending.state === 'busy'
  return (
    <>
      {mute && <Notice sign="stop">{mute}</Notice>}
      <Sent sending={sending} again={last && (() => send(last))} />
      <div class="answers">
        <button type="button" class="button answer" disabled={busy} onClick={() => send('returned')}>
          {words.review.return}
        </button>
        <button type="button" class="button main" data-lit={lit} disabled={busy} onClick={() => send('approved')}>
          {busy
            ? words.review.busy
            : returned.length > 0
              ? words.release.approveBut([...returned, ...Object.keys(partners(of, returned))].join(', '))
              : words.review.approve(of.number)}
          {!lit && <span class="lacks small">{words.review.lacks(open, unseen)}</span>}
        </button>
      </div>
    </>
  )
}

/** What is missing before this decision can be sent, in a sentence. */
function whatLacks(of: VersionShown, fields: ReviewFields, decision: NewReview['decision']): string | undefined {
  const wrong = wrongLength(fields)
  if (wrong) return wrong
  if (decision === 'returned') return saysSomething(fields) ? undefined : words.review.saySomething
  const undecidedOn = undecided(of.plan, fields)
  if (undecidedOn.length > 0) return words.review.undecided(undecidedOn)
  if (fields.returned.length === of.plan.canals.length) return words.release.all
  const [canal] = unsaid(fields)
  if (canal) return words.release.why(canal)
  const open = unacknowledged(of.plan, fields)
  return open.length > 0 ? words.acknowledge.missing(open) : undefined
}
