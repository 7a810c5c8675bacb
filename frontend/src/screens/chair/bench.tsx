import { useState } from 'preact/hooks'
import type { Do } from '@/api/shapes'
import { CanalChips } from '@/parts/canal-chips'
import { Choice, Select, TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sheet } from '@/parts/rationale/sheet'
import { Seen } from '@/parts/seen'
import type { Chair } from '@/store/chair/chair'
import { signOffAtBench, useSigners } from '@/store/chair/hold'
import { pick, picked, standingWith } from '@/store/chair/together'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  canal: string
  node: Do
}

type Word = keyof typeof words.hold.bench.words
const WORDS = Object.keys(words.hold.bench.words) as Word[]

/** The supervisor is at the chair and gives the word on the student's phone, with a one-time code of their own. */
export function Bench({ chair, canal, node, onClose }: Props & { onClose: () => void }) {
  const supervisors = useSigners()
  return (
    <Sheet title={`${words.hold.bench.title}: ${words.hold.title(canal, node.hold_point ?? '')}`} onClose={onClose}>
      <Seen of={supervisors} rows={2}>
        {(all) => {
          const sign = all.filter((supervisor) => supervisor.signs_at_bench)
          if (chair.waiting.length > 0) return <Notice sign="caution">{words.hold.bench.first}</Notice>
          if (sign.length === 0) return <Notice>{words.hold.bench.none}</Notice>
          return <Form chair={chair} canal={canal} node={node} supervisors={sign} />
        }}
      </Seen>
    </Sheet>
  )
}

function Form({ chair, canal, node, supervisors }: Props & { supervisors: readonly { id: string; name: string }[] }) {
  const [supervisor, setSupervisor] = useState('')
  const [code, setCode] = useState('')
  const [word, setWord] = useState<Word>('approved')
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const [sending, run] = useSending()
  const lacksReason = word !== 'approved' && !reason.trim()
  const wrong = (lacks: boolean, field: string) =>
    sending.problem?.at(field) ?? (tried && lacks ? words.required : undefined)
  const all = standingWith(chair, canal)
  const canals = picked(chair, node.id, all)
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (!supervisor || !code || lacksReason) return
    void run(() =>
      signOffAtBench(chair.version.case, {
        supervisor,
        code,
        plan_hash: chair.version.hash,
        canal,
        also: canals.filter((name) => name !== canal),
        node: node.id,
        exit: word === 'returned' ? 'returned' : 'approved',
        despite_missing: word === 'despite_missing',
        reason: reason.trim(),
      }),
    ).finally(() => setCode(''))
  }
  return (
    <form class="stack" onSubmit={submit}>
      <CanalChips
        label={words.together.holdsFor}
        canals={all}
        picked={canals}
        onPick={(name) => pick(chair, node.id, name)}
      />
      <Select
        label={words.hold.bench.who}
        value={supervisor}
        options={[
          { value: '', says: words.hold.bench.pick },
          ...supervisors.map((s) => ({ value: s.id, says: s.name })),
        ]}
        onChoose={setSupervisor}
        wrong={wrong(!supervisor, 'supervisor')}
      />
      <Choice
        label={words.hold.bench.word}
        value={word}
        options={WORDS.map((value) => ({ value, says: words.hold.bench.words[value] }))}
        onChoose={setWord}
      />
      {word !== 'approved' && (
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
        label={words.hold.bench.code}
        hint={words.hold.bench.codeHint}
        value={code}
        onInput={setCode}
        inputMode="numeric"
        autoComplete="one-time-code"
        maxLength={7}
        wrong={wrong(!code, 'code')}
      />
      {sending.state === 'unsent' && <Notice sign="stop">{words.hold.bench.offline}</Notice>}
      {sending.problem?.besides(['supervisor', 'code', 'reason']).map((sentence) => (
        <Notice key={sentence} sign="stop">
          {sentence}
        </Notice>
      ))}
      <button type="submit" class="button main" disabled={sending.state === 'busy'}>
        {sending.state === 'busy' ? words.hold.bench.busy : words.hold.bench.go}
      </button>
    </form>
  )
}
