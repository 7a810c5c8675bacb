import { signal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { SheetStep } from '@/api/shapes'
import { Answer } from '@/panels/hold-point/answer'
import { CanalChips } from '@/parts/canal-chips'
import { TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { StepAnswers } from '@/parts/step-answers'
import type { Chair } from '@/store/chair/chair'
import { shownEvent } from '@/store/chair/hold'
import { askedAgain } from '@/store/chair/image-of-step'
import { lackingAt } from '@/store/chair/lacking'
import { HOLD_POINTS, pick, picked, recordFor, standingWith, stillComing } from '@/store/chair/together'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { OnSiteSignOff } from './on-site-sign-off'

interface Props {
  chair: Chair
  canal: string
  node: SheetStep
}

/** A point where the supervisor's sign-off is due: the student asks for it here, the supervisor answers here. */
export function HoldPoint(props: Props) {
  const { chair, canal } = props
  if (membership.value?.role !== 'supervisor') return <Asking {...props} />
  return (
    <div class="stack">
      <a class="button" href={`/cases/${chair.version.case_id}/sign-off/${canal}`}>
        {words.hold.look}
      </a>
      <Answer chair={chair} canal={canal} />
    </div>
  )
}

/** What is typed before asking, and at which hold point: the field stands on the card, the button under the thumb. */
const question = signal({ at: '', text: '' })

const textAt = (at: string) => (question.value.at === at ? question.value.text : '')

function Asking({ chair, canal, node }: Props) {
  const { asking = null, coming: comesBy = null } = chair.course.canals[canal] ?? {}
  const lacks = lackingAt(chair, canal)
  const asked = shownEvent(chair, asking)
  const comes = shownEvent(chair, comesBy)
  const coming = stillComing(chair, canal)
  const at = placeOf(chair, canal, node)
  return (
    <div class="stack">
      <Notice sign="waiting">
        {words.chair.waitsFor(node.hold_point ?? '')}. {words.chair.goOn}
      </Notice>
      {askedAgain(chair, canal) && <Notice sign="caution">{words.images.putRight.again}</Notice>}
      {coming.length > 0 && !asking && <Notice>{words.together.signOffToCome(coming)}</Notice>}
      {asking && (
        <Notice sign={asked ? 'approved' : 'caution'}>
          {asked ? words.hold.asked(words.when(asked.server_time)) : words.hold.askedUnsent}{' '}
          {asked?.payload.kind === 'ask' && asked.payload.note}
        </Notice>
      )}
      {comes && <Notice sign="approved">{words.hold.comes(comes.actor.name)}</Notice>}
      {lacks.map((what) => (
        <Notice key={what} sign="caution">
          {words.hold.lacking[what]}
        </Notice>
      ))}
      {!asking && !lacks.includes('length') && (
        <TextField
          label={words.hold.question}
          value={textAt(at)}
          onInput={(text) => {
            question.value = { at, text }
          }}
          rows={1}
          maxLength={2000}
        />
      )}
    </div>
  )
}

const placeOf = (chair: Chair, canal: string, node: SheetStep) => `${chair.caseId} ${canal} ${node.id}`

/** The answers at a hold point: ask, or the supervisor is at the chair. */
export function AskForSignOff({ chair, canal, node, onward }: Props & { onward?: ComponentChildren }) {
  const [onSite, setOnSite] = useState(false)
  const { asking = null } = chair.course.canals[canal] ?? {}
  const at = placeOf(chair, canal, node)
  const ready = standingWith(chair, canal).filter((name) => !lackingAt(chair, name).includes('length'))
  const asked = picked(chair, HOLD_POINTS, ready)
  const ask = () => {
    void recordFor(chair, asked, { kind: 'ask', note: textAt(at).trim(), together: '' })
    question.value = { at, text: '' }
  }
  return (
    <StepAnswers>
      {onward}
      {ready[0] === canal && (
        <CanalChips
          label={words.together.asksFor}
          canals={ready}
          picked={asked}
          onPick={(name) => pick(chair, HOLD_POINTS, name)}
        />
      )}
      {!lackingAt(chair, canal).includes('length') && (
        <button type="button" class={asking || onward ? 'button answer' : 'button main'} onClick={ask}>
          {asking ? words.hold.askAgain : asked.length > 1 ? words.together.askFor(asked) : words.hold.ask}
        </button>
      )}
      <button type="button" class="button answer" onClick={() => setOnSite(true)}>
        {words.hold.supervisorHere}
      </button>
      {onSite && <OnSiteSignOff chair={chair} canal={canal} node={node} onClose={() => setOnSite(false)} />}
    </StepAnswers>
  )
}
