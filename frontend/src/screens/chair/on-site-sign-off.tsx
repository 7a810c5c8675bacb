import { useState } from 'preact/hooks'
import type { SheetStep } from '@/api/shapes'
import { CanalChips } from '@/parts/canal-chips'
import { Choice, Select, TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sheet } from '@/parts/rationale/sheet'
import { Seen } from '@/parts/seen'
import type { Chair } from '@/store/chair/chair'
import { signOffOnSite, useSigners } from '@/store/chair/hold'
import { HOLD_POINTS, pick, picked, standingWith } from '@/store/chair/together'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  canal: string
  node: SheetStep
}

type Answer = keyof typeof words.hold.onSiteSignOff.answers
const ANSWERS = Object.keys(words.hold.onSiteSignOff.answers) as Answer[]

/** The supervisor is at the chair and answers on the student's phone, with a one-time code of their own. */
export function OnSiteSignOff({ chair, canal, node, onClose }: Props & { onClose: () => void }) {
  const supervisors = useSigners()
  return (
    <Sheet
      title={`${words.hold.onSiteSignOff.title}: ${words.hold.title(canal, node.hold_point ?? '')}`}
      onClose={onClose}
    >
      <Seen of={supervisors} rows={2}>
        {(all) => {
          const sign = all.filter((supervisor) => supervisor.signs_on_site)
          if (chair.waiting.length > 0) return <Notice sign="caution">{words.hold.onSiteSignOff.first}</Notice>
          if (sign.length === 0) return <Notice>{words.hold.onSiteSignOff.none}</Notice>
          return <Form chair={chair} canal={canal} node={node} supervisors={sign} />
        }}
      </Seen>
    </Sheet>
  )
}

function Form({ chair, canal, node, supervisors }: Props & { supervisors: readonly { id: string; name: string }[] }) {
  const [supervisor, setSupervisor] = useState('')
  const [code, setCode] = useState('')
  const [answer, setAnswer] = useState<Answer>('approved')
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const [sending, run] = useSending()
  const lacksReason = answer !== 'approved' && !reason.trim()
  const wrong = (lacks: boolean, field: string) =>
    sending.problem?.at(field) ?? (tried && lacks ? words.required : undefined)
  const all = standingWith(chair, canal)
  const canals = picked(chair, HOLD_POINTS, all)
  const said = {
    exit: answer === 'returned' ? ('returned' as const) : ('approved' as const),
    despite_missing: answer === 'despite_missing',
    reason: reason.trim(),
  }
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (!supervisor || !code || lacksReason) return
    void run(() =>
      signOffOnSite(chair.version.case_id, {
        supervisor_id: supervisor,
        code,
        plan_hash: chair.version.hash,
        canal,
        also: canals
          .filter((name) => name !== canal)
          .map((name) => ({ ...said, canal: name, node: chair.course.canals[name]?.walk.at ?? '' })),
        node: node.id,
        ...said,
      }),
    ).finally(() => setCode(''))
  }
  return (
    <form class="stack" onSubmit={submit}>
      <CanalChips
        label={words.together.holdsFor}
        canals={all}
        picked={canals}
        onPick={(name) => pick(chair, HOLD_POINTS, name)}
      />
      <Select
        label={words.hold.onSiteSignOff.who}
        value={supervisor}
        options={[
          { value: '', says: words.hold.onSiteSignOff.pick },
          ...supervisors.map((s) => ({ value: s.id, says: s.name })),
        ]}
        onChoose={setSupervisor}
        wrong={wrong(!supervisor, 'supervisor')}
      />
      <Choice
        label={words.hold.onSiteSignOff.answer}
        value={answer}
        options={ANSWERS.map((value) => ({ value, says: words.hold.onSiteSignOff.answers[value] }))}
        onChoose={setAnswer}
      />
      {answer !== 'approved' && (
        <TextField
          label={words.hold.reason}
          value={reason}
          onInput={setReason}
          rows={2}
          maxLength={2000}
          wrong={wrong(lacksReason, 'reason')}
        />
      )}
      <TextField
        label={words.hold.onSiteSignOff.code}
        hint={words.hold.onSiteSignOff.codeHint}
        value={code}
        onInput={setCode}
        inputMode="numeric"
        autoComplete="one-time-code"
        maxLength={7}
        wrong={wrong(!code, 'code')}
      />
      {sending.state === 'unsent' && <Notice sign="stop">{words.hold.onSiteSignOff.offline}</Notice>}
      {sending.problem?.besides(['supervisor', 'code', 'reason']).map((sentence) => (
        <Notice key={sentence} sign="stop">
          {sentence}
        </Notice>
      ))}
      <button type="submit" class="button main" disabled={sending.state === 'busy'}>
        {sending.state === 'busy' ? words.hold.onSiteSignOff.busy : words.hold.onSiteSignOff.go}
      </button>
    </form>
  )
}
