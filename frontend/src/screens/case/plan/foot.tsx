import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Asked, CaseShown, VersionShown } from '@/api/shapes'
import { reasonFor, withoutReason } from '@/panels/plan/asked'
import type { Change } from '@/parts/difference/compare'
import { DifferenceView } from '@/parts/difference/difference-view'
import { TextField } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { askForApproval, type Preview, withdraw } from '@/store/cache/plans'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'
import { GivenIn, givenIn, numberOf } from './given-in'

interface Props {
  of: CaseShown
  last: VersionShown | undefined
  asked: Asked | undefined
  /** There are choices of this phone's own. */
  chosen: boolean
  id: string
  changes: readonly Change[]
  preview: Preview
  onAsked: () => Promise<void>
  onReason: (canal: string, reason: string) => void
  /** What stands beside the one button; with the plan settled, what is due instead. */
  dock: (settled: boolean) => ComponentChildren
}

/** What differs from the last version, and asking for approval or taking it back. */
export function Foot({ of, last, asked, chosen, id, changes, preview, onAsked, onReason, dock }: Props) {
  const [open, setOpen] = useState(false)
  const [sending, run] = useSending()
  const { state, stale } = of.status
  const inputChanges = givenIn(preview, last)
  const many = changes.length + numberOf(inputChanges)
  const waiting = state === 'waiting' && !stale && many === 0
  const computed = preview.state === 'computed'
  // Choices that wait for the connection may yet change the plan.
  const settled = state === 'approved' && many === 0 && (computed || !chosen)
  const [unexplained, setUnexplained] = useState<ReturnType<typeof withoutReason>>([])
  const ask = () => {
    if (!asked) return
    const lacking = preview.plan ? withoutReason(asked, preview.plan) : []
    setUnexplained(lacking)
    if (lacking.length > 0) return
    void run(async () => {
      await askForApproval(of, id, asked)
      await onAsked()
    })
  }
  const back = () => void run(async () => last && withdraw(last))
  return (
    <>
      {many > 0 && (
        <button type="button" class="change-strip" aria-expanded={open} onClick={() => setOpen(!open)}>
          <b>{words.planning.changes(many, last?.number)}</b>
          <span class="small">{open ? words.planning.hide : words.planning.show}</span>
        </button>
      )}
      {open && many > 0 && (
        <div class="change-list">
          {changes.length > 0 && <DifferenceView changes={changes} />}
          {inputChanges && numberOf(inputChanges) > 0 && <GivenIn of={inputChanges} />}
        </div>
      )}
      {state === 'approved' && many > 0 && <p class="small strong">{words.planning.voids(last?.number ?? 0)}</p>}
      {unexplained.map(({ canal, final_size, size_range: { least, most } }) => (
        <TextField
          key={canal}
          label={words.size.sayWhy(canal, final_size, least, most)}
          hint={words.planning.outsideHint}
          wrong={reasonFor(asked, canal) ? undefined : words.required}
          value={reasonFor(asked, canal)}
          maxLength={300}
          onInput={(reason) => onReason(canal, reason)}
        />
      ))}
      <Sent sending={sending} again={ask} />
      <div class="case-dock">
        {dock(settled)}
        {waiting ? (
          <button type="button" class="button answer" disabled={sending.state === 'busy'} onClick={back}>
            {words.planning.withdraw}
          </button>
        ) : settled ? null : (
          <button type="button" class="button main" disabled={!computed || sending.state === 'busy'} onClick={ask}>
            {sending.state === 'busy'
              ? words.planning.asking
              : computed
                ? askSays(state)
                : words.planning.computing(preview.state)}
          </button>
        )}
      </div>
    </>
  )
}

const askSays = (state: string) =>
  ['returned', 'revoked', 'approval_void', 'approved', 'waiting'].includes(state)
    ? words.planning.askAgain
    : words.planning.ask
