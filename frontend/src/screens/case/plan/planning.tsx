import type { ComponentChildren } from 'preact'
import { useRef } from 'preact/hooks'
import type { Asked, CaseShown, Kit, Plan, Technique, VersionListed, VersionShown } from '@/api/shapes'
import { firstAsked, withCanal } from '@/panels/plan/asked'
import { Decision } from '@/panels/plan/decision'
import { compare } from '@/parts/difference/compare'
import { isDecided } from '@/parts/final-size'
import { PlannedTooth } from '@/parts/plan/planned-tooth'
import { useDraft } from '@/store/cache/hooks'
import { usePreview } from '@/store/cache/plans'
import { uuid7 } from '@/store/device/uuid7'
import { CanalSize } from './canal-size'
import { Choices } from './choices'
import { Foot } from './foot'
import { type Basis, basisOf, ChangedMeanwhile, Refusal } from './notices'
import './plan.css'

/** What a plan is made from and compared with. */
export interface Bench {
  readonly of: CaseShown
  readonly versions: readonly VersionListed[]
  /** The version that stands. */
  readonly last: VersionShown | undefined
  readonly kits: Kit[]
  readonly techniques: Technique[]
}

interface Props extends Bench {
  picked: string | undefined
  onPick: (canal: string) => void
  states: ReadonlyMap<string, string>
  /** Leads on from the selected canal. */
  more: ComponentChildren
  /** What else was charted. */
  rest: ComponentChildren
  /** Where the plan stands, in words. */
  status: ComponentChildren
  /** What stands beside the one button of the dock; with the plan settled, what is due instead. */
  dock: (settled: boolean) => ComponentChildren
  /** The board as long as there is no plan. */
  unplanned: (notices: ComponentChildren, rest: ComponentChildren) => ComponentChildren
  page: (children: ComponentChildren, foot: ComponentChildren) => preact.JSX.Element
}

interface Fields {
  id: string
  asked: Asked | null
  /** What the first of these choices was made on. */
  on: Basis | null
}

const empty = (): Fields => ({ id: uuid7(), asked: null, on: null })

/** Kit, technique, needle, irrigant and final sizes, and at once what each choice does to the plan. */
export function Planning(props: Props) {
  const { of, versions, last, kits, techniques, picked } = props
  const draft = useDraft<Fields>(`plan of ${of.id}`, () => empty())
  const asked = draft.fields.value.asked ?? firstAsked(last, kits, techniques)
  const preview = usePreview(of, draft.ready.value ? asked : undefined, last?.number)
  // With no connection the figures are those of the last version, and said to be; where nothing has changed since, they
  // are the same, and nobody waits for them. Once on the screen they stay until others are there: who reads keeps the place.
  const same = draft.ready.value && !draft.fields.value.asked && last?.number === of.status.number && !of.status.stale
  const atOnce = useRef(false)
  atOnce.current ||= same
  const stored = preview.state === 'offline' || (atOnce.current && preview.state !== 'refused')
  const plan = preview.plan ?? (stored ? last?.plan : undefined)
  const now = basisOf(of, last)
  const { on } = draft.fields.value
  const set = (next: Asked) => draft.set({ asked: next, id: uuid7(), on: on ?? now })
  const decided = versions.find((version) => version.reviews.length > 0)
  // Before there is a version, what a choice does is shown against the plan that the screen opened with.
  const opened = useRef<Plan | undefined>(undefined)
  if (preview.state === 'computed') opened.current ??= plan
  const before = last?.plan ?? opened.current
  const changes = plan && before && plan !== before ? compare(before, plan) : []
  const chosen = plan?.canals.find((c) => c.canal === picked)
  const notices = (
    <>
      {props.status}
      {decided && (
        <Decision
          of={decided}
          counts={decided.number === of.status.number && !['approval_void', 'revoked'].includes(of.status.state)}
        />
      )}
      {draft.fields.value.asked && on && (
        <ChangedMeanwhile
          made={on}
          now={now}
          onKeep={() => draft.set({ on: now })}
          onLeave={() => void draft.clear(empty())}
        />
      )}
      {(!same || preview.state !== 'computing') && <Refusal preview={preview} />}
    </>
  )
  const rest = (
    <>
      {asked && <Choices asked={asked} kits={kits} techniques={techniques} onChange={set} open={!plan} />}
      {props.rest}
    </>
  )
  return props.page(
    asked && plan ? (
      <PlannedTooth
        plan={plan}
        before={changes.length > 0 ? before : undefined}
        picked={picked}
        onPick={props.onPick}
        states={props.states}
        notices={notices}
        choose={
          <>
            {chosen && (
              <CanalSize
                canal={chosen}
                kit={kits.find((k) => k.id === asked.kit_id)}
                choice={asked.choices.canals?.find((c) => c.canal === chosen.canal)}
                decided={isDecided(plan.cautions, chosen.canal)}
                onChoose={(change) => set(withCanal(asked, chosen.canal, change))}
              />
            )}
            {props.more}
          </>
        }
        beside={rest}
      />
    ) : (
      props.unplanned(notices, rest)
    ),
    <Foot
      of={of}
      last={last}
      asked={asked}
      chosen={draft.fields.value.asked !== null}
      id={draft.fields.value.id}
      changes={changes}
      preview={preview}
      onAsked={() => draft.clear(empty())}
      onReason={(canal, reason) => asked && set(withCanal(asked, canal, { reason }))}
      dock={props.dock}
    />,
  )
}
