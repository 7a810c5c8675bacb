import type { Caution, Override, VersionShown } from '@/api/shapes'
import { sizesOf } from '@/panels/plan/asked'
import { WIDE_CANAL } from '@/parts/final-size'
import { Sent } from '@/parts/sent'
import { Sign } from '@/parts/signs'
import { addOverride, withdrawOverride } from '@/store/cache/review'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import { type Pick, WithReason } from './with-reason'

interface Props {
  of: VersionShown
  caution: Caution
  /** What supervisors let pass in this case so far. */
  overrides: readonly Override[]
}

/** A supervisor lets the work go on in spite of this caution, with a reason, or takes that back. */
export function OverrideCaution({ of, caution, overrides }: Props) {
  const standing = overrides.find(
    (o) => o.withdrawn_at === null && o.code === caution.code && o.canal === caution.canal,
  )
  if (standing) return <Passed of={of} override={standing} inPlan={caution.overridden != null} />
  if (!caution.may_override || caution.overridden != null) return null
  const { code, canal } = caution
  const name = `let pass ${of.id} ${code} ${canal}`
  const wide = code === WIDE_CANAL
  const says = wide ? { ...words.override, open: words.override.openWide } : words.override
  const send = (body: { id: string; reason: string }, picked: string) =>
    addOverride(of, { ...body, code, canal, ...(wide ? { final_size: Number(picked) } : {}) })
  return (
    <WithReason key={name} name={name} says={says} pick={wide ? sizePick(of, canal ?? '') : undefined} onSend={send} />
  )
}

/** The sizes of the kit: what the student can work with. */
const sizePick = ({ given: input }: VersionShown, canal: string): Pick => ({
  field: 'final_size',
  label: words.size.choose(canal),
  hint: words.size.chooseHint,
  none: words.size.notChosen,
  options: sizesOf(input.kit).map(String),
})

function Passed({ of, override, inPlan }: { of: VersionShown; override: Override; inPlan: boolean }) {
  const [sending, run] = useSending()
  const back = () => void run(() => withdrawOverride(of, override))
  return (
    <div class="stack close">
      <p class="overridden">
        <Sign name="approved" /> <b>{words.override.by(override.supervisor.name, words.when(override.at))}</b>{' '}
        {override.final_size != null && words.override.size(override.final_size)} {inPlan ? '' : override.reason}
      </p>
      {!inPlan && <p class="small">{words.override.next}</p>}
      <Sent sending={sending} again={back} />
      <button type="button" class="button plain" disabled={sending.state === 'busy'} onClick={back}>
        {words.override.back}
      </button>
    </div>
  )
}
