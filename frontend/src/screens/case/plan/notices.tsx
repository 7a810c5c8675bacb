import type { CaseShown, VersionShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import type { Preview } from '@/store/cache/plans'
import { words } from '@/words/en'

/** What a plan's choices were made on: the state of the case, and the version that stood. */
export interface Basis {
  readonly revision: number
  readonly version: number
}

export const basisOf = (of: CaseShown, last: VersionShown | undefined): Basis => ({
  revision: of.revision,
  version: last?.number ?? 0,
})

interface Props {
  made: Basis
  now: Basis
  onKeep: () => void
  onLeave: () => void
}

/** Choices that waited while the case went on: they are kept until their maker says what becomes of them. */
export function ChangedMeanwhile({ made, now, onKeep, onLeave }: Props) {
  if (made.revision === now.revision && made.version === now.version) return null
  return (
    <Notice sign="caution">
      <p>
        {made.version === now.version ? words.planning.caseChanged : words.planning.versionCame(now.version)}{' '}
        {words.planning.choicesKept}
      </p>
      <div class="row wrap">
        <button type="button" class="button" onClick={onKeep}>
          {words.planning.keepMine}
        </button>
        <button type="button" class="button plain" onClick={onLeave}>
          {words.planning.leaveMine}
        </button>
      </div>
    </Notice>
  )
}

/** Why there is no new plan: refused with the planner's sentences, or not computed yet. */
export function Refusal({ preview }: { preview: Preview & { again: () => void } }) {
  if (preview.state === 'computing' && preview.crowded) {
    return <Notice sign="waiting">{words.planning.crowded}</Notice>
  }
  if (preview.state === 'offline') {
    return (
      <Notice sign="caution" action={{ says: words.tryAgain, onDo: preview.again }}>
        {words.planning.notComputed}
      </Notice>
    )
  }
  if (preview.state !== 'refused' || !preview.problem) return null
  return preview.problem.besides([]).map((sentence) => (
    <Notice key={sentence} sign="stop">
      {sentence}
    </Notice>
  ))
}
