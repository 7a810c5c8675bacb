import { useMemo, useRef } from 'preact/hooks'
import { type useCase, useKits, useLengthFigures, useTechniques } from '@/store/cache/cases'
import { usePolling } from '@/store/cache/hooks'
import { useVersion, useVersions } from '@/store/cache/plans'
import { useEarlier, useTreatment } from '@/store/chair/chair'
import { words } from '@/words/en'
import type { Bench } from './plan/planning'

/**
 * What planning this case needs; undefined until all of it is here. What working it needs is brought along, so that both
 * go on without a connection.
 */
export function useBench(id: string, cached: ReturnType<typeof useCase>): Bench | undefined {
  const of = cached.value
  const treatment = useTreatment(id).value
  const versions = useVersions(of?.id)
  const hash = treatment?.course?.plan_hash
  useVersion(versions.value?.find((version) => version.hash === hash)?.id)
  useEarlier(id, versions.value, treatment)
  const last = useVersion(of?.version?.id).value
  const kits = useKits(of?.programme_id).value
  const techniques = useTechniques(of?.programme_id).value
  useLengthFigures(of?.programme_id)
  const waiting = of?.status.state === 'waiting'
  usePolling(waiting, cached)
  usePolling(waiting, versions)
  // A case that names another version is shown once that version is here too: until then whoever reads keeps the place.
  const shown = useRef<Pick<Bench, 'of' | 'last'>>(undefined)
  if (of && (last || !of.version)) shown.current = { of, last: of.version ? last : undefined }
  if (!shown.current || !versions.value || !kits || !techniques) return undefined
  return { ...shown.current, versions: versions.value, kits, techniques }
}

/** How far the work has come, by canal, in a word; none where it has not begun. */
export function useStates(id: string): ReadonlyMap<string, string> {
  const treatment = useTreatment(id).value
  return useMemo(() => {
    const begun = new Set(treatment?.events.map(({ canal }) => canal))
    const states = (treatment?.canals ?? []).map(({ canal, state }) => [
      canal,
      state === 'finished'
        ? words.chart.finished
        : !begun.has(canal)
          ? undefined
          : state === 'open'
            ? words.chart.worked
            : words.chart.held,
    ])
    return new Map(states.filter((each): each is [string, string] => each[1] !== undefined))
  }, [treatment])
}
