import { useState } from 'preact/hooks'
import { CanalChips } from '@/parts/canal-chips'
import { TextField } from '@/parts/fields'
import { useAsked } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import { lackingAt } from '@/store/chair/lacking'
import { HOLD_POINTS, pick, picked, recordFor, standingWith } from '@/store/chair/together'
import { words } from '@/words/en'
import './answer.css'
import { StepAnswers } from '@/parts/step-answers'

interface Props {
  chair: Chair
  canal: string
}

/** Answers that need a reason. */
type Reasoned = 'returned' | 'despite_missing'

/** A supervisor's answer at a hold point, on exactly the plan that is on the screen. */
export function Answer({ chair, canal }: Props) {
  const [asked, setAsked] = useState<Reasoned>()
  useAsked(asked)
  const coming = chair.course.canals[canal]?.coming != null
  // A canal that lacks its length is answered on its own.
  const complete = !lackingAt(chair, canal).includes('length')
  const all = standingWith(chair, canal).filter((name) => name === canal || !lackingAt(chair, name).includes('length'))
  const canals = picked(chair, HOLD_POINTS, complete ? all : [canal])
  const approve = () => void recordFor(chair, canals, { ...SIGN_OFF, exit: 'approved' })
  const come = () => void recordFor(chair, canals, { kind: 'come', note: '' })
  const give = (reason: string) => {
    const exit = asked === 'returned' ? 'returned' : 'approved'
    void recordFor(chair, canals, { ...SIGN_OFF, exit, despite_missing: asked === 'despite_missing', reason })
  }
  if (asked) return <WithReason key={asked} of={asked} onGive={give} onBack={() => setAsked(undefined)} />
  return (
    <StepAnswers also="sign-off-answers">
      {complete && (
        <>
          <CanalChips
            label={words.together.holdsFor}
            canals={all}
            picked={canals}
            onPick={(name) => pick(chair, HOLD_POINTS, name)}
          />
          <button type="button" class="button main" onClick={approve}>
            {canals.length > 1 ? words.together.approve(canals) : words.hold.approve}
          </button>
        </>
      )}
      <button type="button" class="button answer" onClick={() => setAsked('returned')}>
        {words.hold.giveBack}
      </button>
      <button type="button" class="button" disabled={coming} onClick={come}>
        {words.hold.come}
      </button>
      <button type="button" class="button" onClick={() => setAsked('despite_missing')}>
        {words.hold.despiteMissing}
      </button>
    </StepAnswers>
  )
}

const SIGN_OFF = { kind: 'sign_off', despite_missing: false, reason: '', on_site: false, together: '' } as const

interface WithReasonProps {
  of: Reasoned
  onGive: (reason: string) => void
  onBack: () => void
}

/** The student works by the reason, and it stays in the record: there is no such sign-off without one. */
function WithReason({ of, onGive, onBack }: WithReasonProps) {
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const says = reason.trim()
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (says) onGive(says)
  }
  return (
    <form class="stack" onSubmit={submit}>
      <TextField
        label={words.hold.why[of]}
        hint={words.hold.reasonHint}
        value={reason}
        onInput={setReason}
        rows={2}
        maxLength={2000}
        wrong={tried && !says ? words.hold.reasonNeeded : undefined}
      />
      {of === 'returned' && !says && (
        <button type="button" class="button" onClick={() => setReason(words.hold.notReadable)}>
          {words.hold.notReadable}
        </button>
      )}
      <StepAnswers also="sign-off-answers">
        <button type="button" class="button answer" onClick={onBack}>
          {words.chair.cancel}
        </button>
        <button type="submit" class="button main">
          {words.hold.go[of]}
        </button>
      </StepAnswers>
    </form>
  )
}
