import type { PlanChanges, VersionShown } from '@/api/shapes'
import { isOutside, reasonFor } from '@/panels/plan/asked'
import { ChangeList, TakenAway } from '@/panels/plan/change-list'
import { wrongOf } from '@/parts/bounds'
import { TextField } from '@/parts/fields'
import { isDecided, isWide } from '@/parts/final-size'
import { Fold } from '@/parts/fold'
import { Sign } from '@/parts/signs'
import { mm, readMm } from '@/units/millimetres'
import { words } from '@/words/en'

interface Props {
  of: VersionShown
  canal: string
  changes: PlanChanges | undefined
  remark: string
  /** Nothing where the version is no longer open to remarks. */
  onRemark: ((text: string) => void) | undefined
  /** What the supervisor measured beside the plan, as typed. */
  ownLength: string
  onOwnLength: ((typed: string) => void) | undefined
  /** The returned canal that this one ends in one with. */
  partner: string | undefined
}

const changed = (changes: PlanChanges | undefined, canal: string) =>
  changes?.canals.some((c) => c.canal === canal) ?? false

/** What is decided on in the canal that is looked at: a reason outside the range, what changed, and a remark. */
export function CanalCard({ of, canal, changes, remark, onRemark, ownLength, onOwnLength, partner }: Props) {
  const planned = of.plan.canals.find((c) => c.canal === canal)
  if (!planned) return null
  return (
    <div class="stack close remark" data-changed={changed(changes, canal)}>
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
      {onOwnLength && (
        <Fold says={words.review.compare(canal)}>
          <OwnLength planned_mm={planned.length.stop_mm} canal={canal} typed={ownLength} onType={onOwnLength} />
        </Fold>
      )}
      {onRemark && partner && <p class="small strong">{words.release.partner(canal, partner)}</p>}
    </div>
  )
}

interface OwnLengthProps {
  planned_mm: number | null
  canal: string
  typed: string
  onType: (typed: string) => void
}

/** A length of the supervisor's own beside the plan's, which stays as it is. */
function OwnLength({ planned_mm, canal, typed, onType }: OwnLengthProps) {
  const own_mm = readMm(typed)
  const wrong = typed.trim() === '' ? undefined : wrongOf('length', typed)
  return (
    <>
      <TextField
        label={words.review.ownLength(canal)}
        value={typed}
        wrong={wrong}
        inputMode="decimal"
        onInput={(text) => onType(text)}
      />
      {own_mm !== undefined && !wrong && planned_mm !== null && (
        <p class="small" role="status">
          {words.review.compared(mm(planned_mm), mm(own_mm), mm(Math.abs(own_mm - planned_mm)), own_mm - planned_mm)}
        </p>
      )}
    </>
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
