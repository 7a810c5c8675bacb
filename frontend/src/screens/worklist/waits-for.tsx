import type { Running } from '@/api/shapes'
import { words } from '@/words/en'

type Canal = Running['canals'][number]

/**
 * Where a supervisor goes from the list: to the chair where the whole tooth or its visit waits, else to the hold point
 * that was asked for, or to one that waits.
 */
export function whereTo({ case_id: id, halted, check_due, missing = [], canals }: Running): string {
  const whole = halted || check_due || missing.includes('approval_lapsed') || missing.includes('revoked')
  const waiting = canals.filter((canal) => canal.hold_point !== '')
  const first = waiting.find((canal) => canal.asked) ?? waiting[0]
  return whole || !first ? `/cases/${id}/chair` : `/cases/${id}/sign-off/${first.canal}`
}

/** One canal in the list: what it waits for, and what is asked in one line. */
export function WaitsFor({ of: { canal, state, hold_point, asked, note, coming } }: { of: Canal }) {
  const unsure = asked && state === 'open'
  const says = hold_point ? words.worklist.waitsFor(hold_point) : unsure ? words.card.unsure : words.chair.state[state]
  return (
    <span class="block">
      <b>{canal}</b> {says}
      {(hold_point || asked) && (
        <>
          {' '}
          <span class={asked ? 'strong' : 'soft'}>
            {coming ? words.hold.someoneComes : asked ? words.hold.isAsked : words.hold.isNotAsked}
          </span>
          {note && <span class="block soft">{note}</span>}
        </>
      )}
    </span>
  )
}
