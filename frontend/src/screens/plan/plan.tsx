import { useRef, useState } from 'preact/hooks'
import type { Asked, CaseShown, Kit, Plan, Technique, VersionListed, VersionShown } from '@/api/shapes'
import { StatusPill } from '@/panels/case-row'
import { firstAsked, withCanal } from '@/panels/plan/asked'
import { Decision } from '@/panels/plan/decision'
import { CautionCount } from '@/parts/cautions'
import { compare } from '@/parts/difference/compare'
import { LevelMark } from '@/parts/difficulty'
import { isDecided } from '@/parts/final-size'
import { Page } from '@/parts/page'
import { PlanViews } from '@/parts/plan/plan-views'
import { Seen } from '@/parts/seen'
import { useCase, useKits, useTechniques } from '@/store/cache/cases'
import { useDraft, usePolling } from '@/store/cache/hooks'
import { usePreview, useVersion, useVersions } from '@/store/cache/plans'
import { uuid7 } from '@/store/device/uuid7'
import { words } from '@/words/en'
import { CanalSize } from './canal-size'
import { Choices } from './choices'
import { Foot } from './foot'
import { type Basis, basisOf, ChangedMeanwhile, Refusal } from './notices'
import './plan.css'

/** Kit, technique, needle, irrigant and final sizes, and at once what each choice does to the plan. */
export function Planning({ id }: { id: string }) {
  const cached = useCase(id)
  const versions = useVersions(id)
  const last = useVersion(cached.value?.version?.id)
  const kits = useKits(cached.value?.programme_id)
  const techniques = useTechniques(cached.value?.programme_id)
  const of = cached.value
  const waiting = of?.status.state === 'waiting'
  usePolling(waiting, cached)
  usePolling(waiting, versions)
  // A case that names another version is shown once that version is here too: until then whoever reads keeps the place.
  const shown = useRef<Pick<Bench, 'of' | 'last'> | null>(null)
  if (of && (last.value || !of.version)) shown.current = { of, last: of.version ? last.value : undefined }
  if (shown.current && versions.value && kits.value && techniques.value) {
    return <Workbench {...shown.current} versions={versions.value} kits={kits.value} techniques={techniques.value} />
  }
  const missing = of ? [versions, kits, techniques, last].find((part) => part.value === undefined) : undefined
  return (
    <Page title={words.chart.plan} back={{ to: `/cases/${id}`, says: words.back }}>
      <Seen<unknown> of={missing ?? cached} rows={4}>
        {() => null}
      </Seen>
    </Page>
  )
}

interface Bench {
  of: CaseShown
  versions: VersionListed[]
  /** The version that stands. */
  last: VersionShown | undefined
  kits: Kit[]
  techniques: Technique[]
}

interface Fields {
  id: string
  asked: Asked | null
  /** What the first of these choices was made on. */
  on: Basis | null
}

const empty = (): Fields => ({ id: uuid7(), asked: null, on: null })

function Workbench({ of, versions, last, kits, techniques }: Bench) {
  const draft = useDraft<Fields>(`plan of ${of.id}`, () => empty())
  const [picked, setPicked] = useState(of.canals[0]?.name)
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
  const kit = kits.find((k) => k.id === asked?.kit_id)
  // Before there is a version, what a choice does is shown against the plan that the screen opened with.
  const opened = useRef<Plan | undefined>(undefined)
  if (preview.state === 'computed') opened.current ??= plan
  const before = last?.plan ?? opened.current
  const changes = plan && before && plan !== before ? compare(before, plan) : []
  const chosen = plan?.canals.find((c) => c.canal === picked)
  return (
    <Page
      title={words.planning.title(of.tooth.iso)}
      under={words.planning.under(of.patient_alias, plan?.technique, words.setting[of.setting])}
      back={{ to: `/cases/${of.id}`, says: words.back }}
      wide
      foot={
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
        />
      }
    >
      <div class="row wrap">
        <StatusPill of={of.status} />
        {plan && <CautionCount cautions={plan.cautions} />}
        {plan?.difficulty && <LevelMark level={plan.difficulty.level} />}
        {of.status.state !== 'none' && (
          <p class="small">
            {of.status.says} {of.status.do}
          </p>
        )}
      </div>
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
      {(!same || preview.state !== 'computing') && <Refusal preview={preview} caseId={of.id} />}
      {asked && plan && (
        <PlanViews
          plan={plan}
          before={changes.length > 0 ? before : undefined}
          picked={picked}
          onPick={setPicked}
          beside={
            <>
              {chosen && (
                <CanalSize
                  key={chosen.canal}
                  canal={chosen}
                  kit={kit}
                  choice={asked.choices.canals?.find((c) => c.canal === chosen.canal)}
                  decided={isDecided(plan.cautions, chosen.canal)}
                  onChoose={(change) => set(withCanal(asked, chosen.canal, change))}
                />
              )}
              <Choices asked={asked} kits={kits} techniques={techniques} onChange={set} />
            </>
          }
        />
      )}
      {asked && !plan && <Choices asked={asked} kits={kits} techniques={techniques} onChange={set} open />}
    </Page>
  )
}
