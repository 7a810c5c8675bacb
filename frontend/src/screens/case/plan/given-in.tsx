import type { GivenChanges, VersionShown } from '@/api/shapes'
import { ChangeList } from '@/panels/plan/change-list'
import type { Preview } from '@/store/cache/plans'
import { words } from '@/words/en'

/** Told with what comes out of a plan already, by the same name. */
const TOLD = ['kit', 'technique', 'irrigant']

/** What went in otherwise than into the version that stands, without what is told already or only says how far the work is. */
export function givenIn(preview: Preview, last: VersionShown | undefined): GivenChanges | undefined {
  const { inputChanges } = preview
  if (!inputChanges || inputChanges.from_number !== last?.number) return undefined
  const shown = (changes: GivenChanges['tooth']) =>
    changes.filter(({ what, bears_on }) => bears_on !== 'progress' && !TOLD.includes(what))
  const canals = inputChanges.canals.map((canal) => ({ ...canal, changes: shown(canal.changes) }))
  return {
    ...inputChanges,
    tooth: shown(inputChanges.tooth),
    canals: canals.filter((canal) => canal.changes.length > 0),
  }
}

export const numberOf = (inputChanges: GivenChanges | undefined): number =>
  inputChanges
    ? inputChanges.tooth.length + inputChanges.canals.reduce((sum, { changes }) => sum + changes.length, 0)
    : 0

/** What went in, canal by canal, the most dangerous first. */
export function GivenIn({ of: { tooth, canals } }: { of: GivenChanges }) {
  return (
    <section class="stack close" aria-label={words.planning.wentIn}>
      <h3>{words.planning.wentIn}</h3>
      {canals.map(({ canal, changes }) => (
        <section key={canal} aria-label={canal}>
          <h4 class="difference-of">{canal}</h4>
          <ChangeList changes={changes} came={[]} went={[]} />
        </section>
      ))}
      {tooth.length > 0 && (
        <section aria-label={words.difference.tooth}>
          <h4 class="difference-of">{words.difference.tooth}</h4>
          <ChangeList changes={tooth} came={[]} went={[]} />
        </section>
      )}
    </section>
  )
}
