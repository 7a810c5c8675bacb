import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { approvedDespiteMissing, lastSignOff, type SignOffGiven, wasFirst } from '@/store/chair/hold'
import { askedAgain, restedOnGone } from '@/store/chair/image-of-step'
import { words } from '@/words/en'

interface Props {
  chair: Chair
  canal: string
  /** Whether the canal waits for a sign-off now. */
  waits: boolean
}

/** What was decided on the canal: who, when and why; plainly, where somebody else was first. */
export function Answered({ chair, canal, waits }: Props) {
  const first = wasFirst(chair, canal)
  const last = lastSignOff(chair, canal)
  const unsent = chair.waiting.some(({ event }) => event.canal === canal && event.payload.kind === 'sign_off')
  return (
    <>
      {unsent && <Notice sign="caution">{words.hold.unsent}</Notice>}
      {first && (
        <Notice sign="stop">
          <p class="strong">{words.hold.late(first.name, words.when(first.at))}</p>
          <GivenAnswer of={first} />
        </Notice>
      )}
      {!waits && (
        <Notice sign={last?.payload.exit ?? 'note'}>
          {last ? <GivenAnswer of={last} /> : <p>{words.hold.notWaiting}</p>}
          <p>
            <a href="/worklist">{words.hold.toList}</a>
          </p>
        </Notice>
      )}
      {restedOnGone(chair, canal) && (
        <Notice sign="caution">{words.images.putRight[askedAgain(chair, canal) ? 'again' : 'rested']}</Notice>
      )}
      <InSpite chair={chair} canal={canal} />
    </>
  )
}

function GivenAnswer({ of: { name, at, payload } }: { of: SignOffGiven }) {
  return (
    <p>
      {words.hold.given(payload.exit, name, words.when(at))} {payload.on_site && `(${words.hold.onSite}) `}
      {!payload.despite_missing && payload.reason}
    </p>
  )
}

/** What the canal went on in spite of: it stays in sight for ever. */
export function InSpite({ chair, canal }: { chair: Chair; canal: string }) {
  return approvedDespiteMissing(chair, canal).map(({ name, at, payload }) => (
    <Notice key={at} sign="caution">
      {words.hold.despiteMissingFor(payload.reason ?? '')} {name}, {words.when(at)}
    </Notice>
  ))
}
