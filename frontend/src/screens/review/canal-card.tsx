import type { PlanChanges, VersionShown } from '@/api/shapes'
import { isOutside, reasonFor } from '@/panels/plan/asked'
import { ChangeList, TakenAway } from '@/panels/plan/change-list'
import { TextField, Tick } from '@/parts/fields'
import { isDecided, isWide, sizeOf } from '@/parts/final-size'
import { Sign } from '@/parts/signs'
import { words } from '@/words/en'

interface Props {
  of: VersionShown
  canal: string
  changes: PlanChanges | undefined
  remark: string
  /** Nothing where the version is no longer open to remarks. */
  onRemark: ((text: string) => void) | undefined
  /** Whether an approval would leave this canal out. */
  returned: boolean
  onReturn: (returned: boolean) => void
  /** The returned canal that this one ends in one with. */
  partner: string | undefined
}

const changed = (changes: PlanChanges | undefined, canal: string) =>
  changes?.canals.some((c) => c.canal === canal) ?? false

/** One canal of the plan that is decided on: what it is, what changed, a reason outside the range, and a remark. */
export function CanalCard({ of, canal, changes, remark, onRemark, returned, onReturn, partner }: Props) {
  const planned = of.plan.canals.find((c) => c.canal === canal)
  if (!planned) return null
  const { end_mm, length } = planned
  return (
    <section
      class="card stack close remark"
      aria-label={words.chart.canal(canal)}
      data-changed={changed(changes, canal)}
    >
      <p>
        <b>{canal}</b> {words.review.facts(sizeOf(planned), end_mm, length.state, length.rests_on)}
      </p>
      {isOutside(planned) && (
        <p class="outside-range">
          <Sign name="caution" />{' '}
          <b>{words.size.saysWhy(planned.final_size, planned.size_range.least, planned.size_range.most)}</b>{' '}
          {reasonFor(of, canal) || words.size.noReason}
        </p>
      )}
      {isWide(planned.size_range) && !isDecided(of.plan.cautions, canal) && (
        <p class="outside-range">
          <Sign name="stop" /> <b>{words.size.wide}</b>{' '}
          {words.size.wideAsks(planned.size_range.least, planned.size_range.most)}
        </p>
      )}
      <CanalChanged changes={changes} canal={canal} />
      {onRemark && (
        <TextField
          label={words.review.remark(canal)}
          value={remark}
          rows={1}
          maxLength={2000}
          onInput={(text) => onRemark(text)}
        />
      )}
      {onRemark && of.plan.canals.length > 1 && (
        <Tick label={words.release.give(canal)} checked={returned} onChange={onReturn} />
      )}
      {onRemark && partner && <p class="small strong">{words.release.partner(canal, partner)}</p>}
    </section>
  )
}

function CanalChanged({ changes, canal }: { changes: PlanChanges | undefined; canal: string }) {
  if (!changes) return null
  const of = changes.canals.find((c) => c.canal === canal)
  if (!of) return <p class="small soft">{words.review.unchanged}</p>
  if (of.came) return <p class="small">{words.review.came}</p>
  if (of.went) return <TakenAway />
  return <ChangeList changes={of.changes} came={of.cautions_came} went={of.cautions_went} />
}
