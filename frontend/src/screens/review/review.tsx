import { useState } from 'preact/hooks'
import type { PlanChanges, VersionListed, VersionShown } from '@/api/shapes'
import { ImagesOf } from '@/panels/images/images-of'
import { ChangeList } from '@/panels/plan/change-list'
import { Decision } from '@/panels/plan/decision'
import { NextPlan, WaitingList } from '@/panels/plan/waiting-plans'
import { CautionCount } from '@/parts/cautions'
import { LevelMark } from '@/parts/difficulty'
import { TextField } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { PlannedTooth } from '@/parts/plan/planned-tooth'
import { Seen } from '@/parts/seen'
import { Pill } from '@/parts/signs'
import { useCase } from '@/store/cache/cases'
import { useDraft } from '@/store/cache/hooks'
import { revoke, useReview } from '@/store/cache/review'
import { uuid7 } from '@/store/device/uuid7'
import type { Draft } from '@/store/session/drafts'
import { membership, personId } from '@/store/session/session'
import { own } from '@/walk/own'
import { words } from '@/words/en'
import { Acknowledge } from './acknowledge'
import { Answer } from './answer'
import { CanalCard } from './canal-card'
import { Chips } from './chips'
import { EarlierCases } from './earlier-cases'
import { OverrideCaution } from './override'
import { partners, Release } from './release'
import { emptyReview, type ReviewFields } from './review-fields'
import { SaidLast } from './said-last'
import { WithReason } from './with-reason'
import './review.css'

/** A plan that was asked for: what it is, what changed, a remark on each canal, and the decision. */
export function Review({ id }: { id: string }) {
  const { version, versions, changes, before } = useReview(id)
  if (version.value)
    return <Asked of={version.value} versions={versions} changes={changes} before={before} seen={version} />
  return (
    <Page title={words.review.plan} back={{ to: '/worklist', says: words.back }}>
      <Seen of={version} rows={5}>
        {() => null}
      </Seen>
    </Page>
  )
}

interface Props {
  of: VersionShown
  versions: readonly VersionListed[] | undefined
  changes: PlanChanges | undefined
  before: VersionShown | undefined
  seen: ReturnType<typeof useReview>['version']
}

function Asked({ of, versions, changes, before, seen }: Props) {
  const draft = useDraft<ReviewFields>(`review of ${of.id} ${of.reviews.length}`, () => emptyReview(uuid7()))
  const [chosen, setPicked] = useState<string>()
  const order = [...(changes?.canals ?? []), ...of.plan.canals].map((each) => each.canal)
  const changedFirst = of.plan.canals.toSorted((a, b) => order.indexOf(a.canal) - order.indexOf(b.canal))
  const picked = chosen ?? changedFirst[0]?.canal
  const supervises = membership.value?.role === 'supervisor'
  const open = of.state === 'waiting' && supervises
  const overrides = useCase(of.case_id).value?.overrides ?? []
  return (
    <div class="review">
      <aside class="review-list not-on-paper" aria-label={words.worklist.title}>
        <h2>{words.worklist.title}</h2>
        <WaitingList current={of.id} />
      </aside>
      <Page
        title={words.review.title(of.plan.tooth.iso, of.number)}
        under={words.review.under(
          of.author.name,
          of.plan.technique,
          words.setting[of.plan.setting],
          changes?.from_number,
        )}
        back={{ to: '/worklist', says: words.back }}
        aside={<StatePill of={of} />}
        wide
        foot={open && <Answer of={of} draft={draft} />}
      >
        <Seen of={seen}>{() => null}</Seen>
        {of.stale && of.state === 'waiting' && <Notice sign="caution">{words.review.stale}</Notice>}
        {of.state !== 'waiting' && <Decision of={of} counts={of.state !== 'superseded' && !of.stale} />}
        <SaidLast of={of} versions={versions} changes={changes} />
        <Release of={of} supervises={supervises} />
        <Revoke of={of} />
        {of.state === 'superseded' && <Notice sign="caution">{words.review.superseded}</Notice>}
        <PlannedTooth
          plan={of.plan}
          before={before?.plan}
          picked={picked}
          onPick={setPicked}
          under={
            <Chips
              plan={of.plan}
              before={before?.plan}
              picked={picked}
              onPick={setPicked}
              draft={open ? draft : undefined}
            />
          }
          notices={open && <Acknowledge plan={of.plan} draft={draft} />}
          choose={picked && <Picked of={of} canal={picked} changes={changes} draft={open ? draft : undefined} />}
          act={
            supervises ? (caution) => <OverrideCaution of={of} caution={caution} overrides={overrides} /> : undefined
          }
          beside={
            <>
              {changes && <ToothChanges changes={changes} />}
              <ImagesOf caseId={of.case_id} />
              {open && (
                <TextField
                  label={words.review.note}
                  value={draft.fields.value.note}
                  rows={2}
                  maxLength={2000}
                  onInput={(note) => draft.set({ note })}
                />
              )}
              <div class="row wrap">
                <CautionCount cautions={of.plan.cautions} />
                {of.plan.difficulty && <LevelMark level={of.plan.difficulty.level} />}
              </div>
              {supervises && <EarlierCases of={of} />}
              <NextPlan current={of.id} />
            </>
          }
        />
      </Page>
    </div>
  )
}

interface PickedProps {
  of: VersionShown
  canal: string
  changes: PlanChanges | undefined
  draft: Draft<ReviewFields> | undefined
}

/** The canal that is looked at, with what is remarked on it. */
function Picked({ of, canal, changes, draft }: PickedProps) {
  const fields = draft?.fields.value
  return (
    <CanalCard
      of={of}
      canal={canal}
      changes={changes}
      partner={fields && own(partners(of, fields.returned), canal)}
      ownLength={(fields?.lengths && own(fields.lengths, canal)) ?? ''}
      onOwnLength={draft && fields && ((typed) => draft.set({ lengths: { ...fields.lengths, [canal]: typed } }))}
      remark={(fields && own(fields.remarks, canal)) ?? ''}
      onRemark={draft && fields && ((text) => draft.set({ remarks: { ...fields.remarks, [canal]: text } }))}
    />
  )
}

function StatePill({ of }: { of: VersionShown }) {
  if (of.state === 'superseded') return <Pill sign="draft">{words.review.replaced}</Pill>
  return <Pill sign={of.state === 'revoked' ? 'stop' : of.state}>{words.state[of.state]}</Pill>
}

function ToothChanges({ changes }: { changes: PlanChanges }) {
  const { tooth, cautions_came, cautions_went, nothing } = changes
  if (nothing) return <p class="soft">{words.review.nothing(changes.from_number)}</p>
  if (tooth.length + cautions_came.length + cautions_went.length === 0) return null
  return (
    <section class="card stack close remark" data-changed>
      <h3>{words.difference.tooth}</h3>
      <ChangeList changes={tooth} came={cautions_came} went={cautions_went} />
    </section>
  )
}

/** The way to withdraw an approval that stands, for whoever may. */
function Revoke({ of }: { of: VersionShown }) {
  if (of.state !== 'approved' || !mayRevoke(of)) return null
  const name = `revoke ${of.id} ${of.revocations.length}`
  return <WithReason key={name} name={name} says={words.revoke} onSend={(body) => revoke(of, body)} />
}

/** Whoever gave the approval, or a coordinator; one that was carried over the server knows the giver of. */
function mayRevoke({ reviews, carried_from }: VersionShown): boolean {
  const role = membership.value?.role
  const giver = reviews.findLast((review) => review.decision === 'approved')?.supervisor.id
  return role === 'coordinator' || (role === 'supervisor' && (giver === personId() || carried_from !== null))
}
